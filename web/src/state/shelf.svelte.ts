// SPDX-License-Identifier: MIT
// All cars and loose parts, the car on the bench and its parts' ratings, edited as text and checked by the parts' own
// schemas. A field that does not hold keeps its text and gets the schema's words; the shelf changes only as a whole.
import { labelDoubts } from '#core/limits/label-doubts';
import { carSchema, partKinds, partNameOf, type Car } from '#core/parts/part';
import { asOwn } from '#core/parts/part-classes';
import { datedSetUp } from '#core/parts/set-up';
import { identified, knownParts, type KnownPart, type NewId } from '#core/parts/shelf-identity';
import {
  carOnBench,
  changeCar,
  sharedName,
  ShelfRefused,
  shelfSchema,
  type ShelfContent,
} from '#core/parts/shelf';
import { withDrawn, withLastDrawn } from './shelf-drawn.ts';
import * as kept from './shelf-memory.ts';

export type FieldValue = string | boolean;

/** A made-up 1:10 truck with a 13.5-turn motor and a low-profile servo; typical values, from memory. */
export const marmot: Car = {
  name: 'Marmot',
  motor: {
    kind: 'motor',
    name: 'Motor',
    turns: 13.5,
    polePairs: 1,
    sensored: true,
    ratedKvRpmPerV: 2900,
    ratedKvTolerance: 0.07,
    ratedSpeedRpm: 34_000,
    ratedNoLoadA: 3.4,
  },
  servo: {
    kind: 'servo',
    name: 'Steering servo',
    digital: true,
    ratedVoltageV: 7.4,
    ratedStallA: 3.8,
    ratedStallTolerance: 0.15,
    degreesPerUs: 0.1,
  },
  controller: {
    kind: 'controller',
    name: 'Controller',
    railSettingV: 6,
    railFloorV: 4,
    throttle: { lowUs: 1000, neutralUs: 1500, highUs: 2000 },
  },
  pack: { kind: 'pack', name: 'Race pack', cells: 2, chemistry: 'lipo', capacityAh: 5 },
};

/** Parts and groups of figures that need not be there; a part begins with its kind and a name. */
const born: Readonly<Record<string, object>> = {
  drive: { kind: 'drive', name: 'Drive train' },
  radio: { kind: 'radio', name: 'Radio' },
  leads: { kind: 'leads', name: 'Leads' },
};
/** Sets `path` ("motor.turns") in a copy of `car`; undefined takes an optional figure out, and its group with the last. A
 *  part that goes so was never another one: the car keeps its identity. */
export function withField(car: Car, path: string, value: unknown): Car {
  const copy = structuredClone(car) as unknown as Record<string, unknown>;
  const keys = path.split('.');
  const last = keys.pop()!;
  const holders = keys.reduce(
    (found, key) => {
      const inside = found[found.length - 1];
      inside[key] ??= structuredClone(born[key]) ?? {};
      return [...found, inside[key] as Record<string, unknown>];
    },
    [copy],
  );
  const holder = holders[holders.length - 1];
  if (value === undefined) delete holder[last];
  else holder[last] = value;
  const group = keys[keys.length - 1];
  if (value === undefined && Object.keys(holder).every((key) => ['kind', 'name', 'id'].includes(key))) {
    delete holders[holders.length - 2]?.[group];
    if (holder.id !== undefined) copy.unentered = { ...car.unentered, [group]: holder.id };
  }
  return copy as unknown as Car;
}

export class Shelf {
  #content = $state.raw<ShelfContent>()!;
  #trouble = $state<string | null>(null);
  #errors = $state.raw<Readonly<Record<string, string>>>({});
  /** Typed, but the car does not hold with it alone: the other figures of its group are still to come. */
  #waiting = $state.raw<Readonly<Record<string, unknown>>>({});
  #typed = $state.raw<kept.Typed>({});
  #ears: (() => void)[] = [];
  #car = $derived(carOnBench(this.#content));
  #known = $derived(knownParts(this.#content));
  #doubts = $derived(labelDoubts(this.#car));

  constructor(
    private readonly memory: kept.Memory,
    private readonly now: () => number = () => Date.now(),
    private readonly newId: NewId = () => crypto.randomUUID(),
  ) {
    const { content, trouble } = kept.readShelf(memory, marmot);
    [this.#trouble, this.#typed] = [trouble, kept.readTyped(memory)];
    this.#content = identified(withLastDrawn(content, kept.readDrawn(memory)), this.newId);
    if (JSON.stringify(content) !== JSON.stringify(this.#content)) kept.keepShelf(memory, this.#content);
  }
  /** The one on the bench: every other screen is about it. */
  get car(): Car {
    return this.#car;
  }
  get content(): ShelfContent {
    return this.#content;
  }
  /** Every part with its name and identity, also of what was taken away. */
  get known(): readonly KnownPart[] {
    return this.#known;
  }
  /** Told after every change. */
  attend(hear: () => void): void {
    this.#ears.push(hear);
  }
  /** Why the last act changed nothing, or what of the kept shelf could not be read. */
  get trouble(): string | null {
    return this.#trouble;
  }
  /** By path, what was typed and waits for the other figures of its group. */
  get waiting(): Readonly<Record<string, unknown>> {
    return this.#waiting;
  }
  error(path: string): string | undefined {
    return this.#errors[path];
  }
  /** What looks unusual about a figure that is allowed; nothing is refused for it. */
  doubt(path: string): string | undefined {
    return this.#doubts.find((words) => words.startsWith(`${path}: `))?.slice(path.length + 2);
  }
  /** A quantity as it was typed last, with its unit. */
  typed(path: string): string | undefined {
    return this.#typed[path];
  }
  /** Any act of core/parts/shelf; one that is refused changes nothing and leaves its words. */
  act(change: (shelf: ShelfContent) => ShelfContent): boolean {
    try {
      this.#put(checked(change(this.#content)));
      this.#trouble = null;
      return true;
    } catch (cause) {
      if (!(cause instanceof ShelfRefused)) throw cause;
      this.#trouble = cause.message;
      return false;
    }
  }
  /** Takes over a field if the whole car still holds, together with what was typed before and waits for this one;
   *  else keeps the old value and the words. */
  edit(path: string, value: unknown, typed?: string): void {
    if (typed !== undefined) this.#keepTyped({ ...this.#typed, [path]: typed });
    const waiting = { ...this.#waiting, [path]: value };
    for (const tried of [waiting, { [path]: value }]) {
      const read = carSchema.safeParse(
        Object.entries(tried).reduce<Car>(
          (car, [at, each]) => withField(asOwn(car, at), at, each),
          this.#car,
        ),
      );
      if (read.success) return this.#take(read.data, Object.keys(tried));
    }
    this.#waiting = waiting;
    this.refuse(path, this.#wordsFor(path, value));
  }
  /** What is typical of the class is so for this very part too. */
  confirm(path: string): void {
    this.replace(asOwn(this.#car, path));
  }
  /** What was typed could not even be read. */
  refuse(path: string, words: string): void {
    this.#errors = { ...this.#errors, [path]: words };
  }
  #wordsFor(path: string, value: unknown): string {
    const { error } = carSchema.safeParse(withField(this.#car, path, value));
    const issues = error?.issues ?? [];
    return (issues.find((each) => each.path.join('.') === path) ?? issues[0]).message;
  }
  #take(car: Car, paths: readonly string[]): void {
    const words = this.#nameTaken(car, paths);
    if (words) return this.refuse(paths.find(isName) ?? paths[0], words);
    const left = <T>(of: Readonly<Record<string, T>>) =>
      Object.fromEntries(Object.entries(of).filter(([path]) => !paths.includes(path)));
    [this.#errors, this.#waiting] = [left(this.#errors), left(this.#waiting)];
    this.replace(car);
  }
  #nameTaken(car: Car, paths: readonly string[]): string | null {
    try {
      const changed = changeCar(this.#content, this.#car.name, car);
      const named = paths
        .filter(isName)
        .flatMap((path) => partKinds.filter((kind) => path === `${kind}.name`));
      const shared = named.map((kind) => sharedName(changed, kind, partNameOf(car, kind)));
      return shared.find((words) => words !== null) ?? null;
    } catch (cause) {
      return (cause as Error).message;
    }
  }
  #keepTyped(typed: kept.Typed): void {
    this.#typed = typed;
    kept.keepTyped(this.memory, typed);
  }
  /** The car on the bench becomes this one; `runId`: of the run that proposed it. */
  replace(car: Car, runId?: string): void {
    this.#put(changeCar(this.#content, this.#car.name, car), runId);
    kept.keepOwnLimits(this.memory, this.#car);
  }
  /** Set-up values that changed get their day. */
  #put(content: ShelfContent, runId?: string): void {
    const at = new Date(this.now()).toISOString();
    const { cars: old } = this.#content;
    const before = (name: string, index: number) =>
      old.find((car) => car.name === name) ?? (old.length === content.cars.length ? old[index] : undefined);
    const cars = content.cars.map((car, index) => datedSetUp(before(car.name, index) ?? car, car, at, runId));
    this.#write({ ...content, cars });
  }
  #write(content: ShelfContent): void {
    if (content.onBench !== this.#content.onBench) [this.#errors, this.#waiting] = [{}, {}];
    this.#content = identified(content, this.newId);
    kept.keepShelf(this.memory, this.#content);
    for (const hear of this.#ears) hear();
  }
  /** A car that the virtual rig drew: a person's own limits and its baselines come back by its name. */
  adopt(car: Car): void {
    const own = carSchema.safeParse({ ...car, ...kept.readOwnLimits(this.memory, car.name) });
    const before = kept.readDrawn(this.memory);
    const drawing = { car, own: own.success ? own.data : car, before, example: marmot };
    this.#write(withDrawn(this.#content, drawing));
    kept.keepDrawn(this.memory, car);
  }
}
function checked(content: ShelfContent): ShelfContent {
  const read = shelfSchema.safeParse(content);
  if (!read.success) throw new ShelfRefused(read.error.issues[0].message);
  return read.data;
}
const isName = (path: string): boolean => /^(\w+\.)?name$/.test(path);
