// SPDX-License-Identifier: MIT
// What was mended on which part and when, as noted by a person: a part's history begins anew there. Kept in the
// browser's memory; read back through zod, as it may be damaged.
import { repairSchema, repairsSchema } from '#core/history/repair';
import type { Repair } from '#core/history/part-history';

interface Memory {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}
const key = 'repairs';

export class Repairs {
  #list = $state.raw<readonly Repair[]>([]);

  constructor(private readonly memory: Memory) {
    this.#list = kept(memory);
  }
  get list(): readonly Repair[] {
    return this.#list;
  }
  of(partName: string): readonly Repair[] {
    return this.#list.filter((repair) => repair.partName === partName);
  }
  /** Null when it is noted; else what is wrong, in words. `today` is the last day a repair can have. */
  note(repair: Repair, today: string): string | null {
    const read = repairSchema.safeParse(repair);
    if (!read.success) return read.error.issues[0].message;
    if (repair.at > today) return `${repair.at} is still to come: note it once it is done`;
    if (this.of(repair.partName).some(({ at }) => at === repair.at))
      return 'there is a repair on that day already: take it out first, or put both in its words';
    this.#keep([...this.#list, read.data]);
    return null;
  }
  /** Those of a file that are not here. */
  join(arriving: readonly Repair[]): void {
    this.#keep([...this.#list, ...arriving]);
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
