// SPDX-License-Identifier: MIT
// What was mended on which part and when, as noted by a person: a part's history begins anew there. Kept in the
// browser's memory; read back through zod, as it may be damaged.
import { repairSchema, repairsSchema } from '#core/history/repair';
import type { Repair } from '#core/history/part-history';
import { isOfPart, type PartRef } from '#core/parts/identity';
import { withPartId } from '#core/parts/shelf-identity';

interface Memory {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}
const key = 'repairs';

export class Repairs {
  #list = $state.raw<readonly Repair[]>([]);

  /** `parts`: what is on the shelf, for repairs from before parts had identities. */
  constructor(
    private readonly memory: Memory,
    private readonly parts: () => readonly PartRef[] = () => [],
  ) {
    this.#list = kept(memory);
    this.identify();
  }
  get list(): readonly Repair[] {
    return this.#list;
  }
  of(part: PartRef): readonly Repair[] {
    return this.#list.filter((repair) => isOfPart(repair, part));
  }
  /** Those without an identity take that of the one part that has their name. */
  identify(): void {
    const parts = this.parts();
    const list = this.#list.map((repair) => withPartId(repair, parts));
    if (list.some((repair, at) => repair !== this.#list[at])) this.#keep(list);
  }
  /** Null when it is noted; else what is wrong, in words. `today` is the last day a repair can have. */
  note(repair: Repair, today: string): string | null {
    const read = repairSchema.safeParse(repair);
    if (!read.success) return read.error.issues[0].message;
    if (repair.at > today) return `${repair.at} is still to come: note it once it is done`;
    if (this.of(repair).some(({ at }) => at === repair.at))
      return 'there is a repair on that day already: take it out first, or put both in its words';
    this.#keep([...this.#list, read.data]);
    return null;
  }
  /** Those of a file that are not here. */
  join(arriving: readonly Repair[]): void {
    this.#keep([...this.#list, ...arriving]);
    this.identify();
  }
  remove(repair: Repair): void {
    this.#keep(this.#list.filter((each) => each !== repair));
  }
  #keep(list: readonly Repair[]): void {
    this.#list = list;
    this.memory.setItem(key, JSON.stringify(list));
  }
}
function kept(memory: Memory): readonly Repair[] {
  try {
    return repairsSchema.parse(JSON.parse(memory.getItem(key) ?? '[]'));
  } catch {
    return [];
  }
}
