// SPDX-License-Identifier: MIT
// The shelf as this browser keeps it, read back through zod. Who used the page while it knew one car has that car on the
// shelf; what can't be read is set aside, never overwritten; cars that an older page added since the shelf moved join.
import { z } from 'zod';
import { withoutIdentity } from '#core/parts/identity';
import { carSchema, type Car } from '#core/parts/part';
import { newShelf, shelfSchema, type ShelfContent } from '#core/parts/shelf';
import { mergedShelf } from '#core/parts/shelf-merge';

export interface Memory {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  /** What was written to the place of before since the shelf moved from there. */
  writtenSince?(key: string): string | null;
}
const key = 'shelf';
/** Where the one car was kept; left as it is. */
const oneCarKey = 'car';
const asideKey = 'shelf that could not be read';
const drawnKey = 'car that the virtual rig drew';

export interface KeptShelf {
  readonly content: ShelfContent;
  /** What could not be read, and what became of it. */
  readonly trouble: string | null;
}
/** `example`: the car of somebody who has none yet. */
export function readShelf(memory: Memory, example: Car): KeptShelf {
  const text = memory.getItem(key);
  if (text === null) return fromOneCar(memory, example);
  const kept = shelfSchema.safeParse(json(text));
  if (kept.success) return withLate(kept.data, memory.writtenSince?.(key) ?? null);
  memory.setItem(asideKey, text);
  const trouble = `The shelf that this browser kept ${unreadable(kept.error)}. It is set aside in the browser's memory. Open your last saved file in the logbook to get your cars back.`;
  return { content: fromOneCar(memory, example).content, trouble };
}
function withLate(content: ShelfContent, text: string | null): KeptShelf {
  const late = shelfSchema.safeParse(json(text));
  if (!late.success) return { content, trouble: null };
  // Identities were given anew there: names tell what is what.
  const { shelf, added, differing } = mergedShelf(content, withoutIdentity(late.data));
  const joined = added.length > 0 ? ` ${added.join(', ')} joined the shelf.` : '';
  const left =
    differing.length > 0
      ? ` Of ${differing.map(({ mine }) => mine.name).join(', ')} the one here stays as it is.`
      : '';
  const trouble =
    joined || left ? `The shelf was also changed in the small memory of this browser.${joined}${left}` : null;
  return { content: shelf, trouble };
}
function fromOneCar(memory: Memory, example: Car): KeptShelf {
  const text = memory.getItem(oneCarKey);
  if (text === null) return { content: newShelf(example), trouble: null };
  const car = carSchema.safeParse(json(text));
  if (car.success) return { content: newShelf(car.data), trouble: null };
  const trouble = `The car that this browser kept ${unreadable(car.error)}. It stays in the browser's memory. Open your last saved file in the logbook to get it back, or enter it anew.`;
  return { content: newShelf(example), trouble };
}
function unreadable({ issues: [issue] }: z.ZodError): string {
  return `can't be read (${issue.path.join('.') || 'the whole'}: ${issue.message})`;
}
export function keepShelf(memory: Memory, content: ShelfContent): void {
  memory.setItem(key, JSON.stringify(content));
}
/** The car as the virtual rig drew it last, and the name it has on the shelf. */
export function readDrawn(memory: Memory): Car | null {
  const read = carSchema.safeParse(json(memory.getItem(drawnKey)));
  return read.success ? read.data : null;
}
export function keepDrawn(memory: Memory, car: Car): void {
  memory.setItem(drawnKey, JSON.stringify(car));
}
const limits = carSchema.pick({ overrides: true, baselines: true });
export type OwnLimits = z.infer<typeof limits>;
const limitsKey = (name: string) => `own limits of ${name}`;
export function readOwnLimits(memory: Memory, name: string): OwnLimits {
  const read = limits.safeParse(json(memory.getItem(limitsKey(name))) ?? {});
  return read.success ? read.data : {};
}
export function keepOwnLimits(memory: Memory, { name, overrides, baselines }: Car): void {
  memory.setItem(limitsKey(name), JSON.stringify({ overrides, baselines }));
}
const typedKey = 'quantities as typed';
export type Typed = Readonly<Record<string, string>>;
export function readTyped(memory: Memory): Typed {
  const read = z.record(z.string(), z.string()).safeParse(json(memory.getItem(typedKey)));
  return read.success ? read.data : {};
}
export function keepTyped(memory: Memory, typed: Typed): void {
  memory.setItem(typedKey, JSON.stringify(typed));
}
function json(text: string | null): unknown {
  try {
    return text === null ? null : (JSON.parse(text) as unknown);
  } catch {
    return null;
  }
}
