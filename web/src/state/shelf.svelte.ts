// SPDX-License-Identifier: MIT
// The car on the bench and its parts' ratings, edited as text and checked by the parts' own schemas. A field
// that does not hold keeps its text and gets the schema's words; the car changes only as a whole.
import { z } from 'zod';
import { labelDoubts } from '#core/limits/label-doubts';
import { carSchema, type Car } from '#core/parts/part';

interface Memory {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}
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

function readCar(memory: Memory): Car {
  try {
    return carSchema.parse(JSON.parse(memory.getItem('car') ?? 'null'));
  } catch {
    return marmot;
  }
}
const typedKey = 'quantities as typed';
function readTyped(memory: Memory): Readonly<Record<string, string>> {
  try {
    return z.record(z.string(), z.string()).parse(JSON.parse(memory.getItem(typedKey) ?? '{}'));
  } catch {
    return {};
  }
}
const ownKey = (name: string) => `own limits of ${name}`;
function readOwn(memory: Memory, name: string): Pick<Car, 'overrides' | 'baselines'> {
  try {
    return JSON.parse(memory.getItem(ownKey(name)) ?? '{}') as Pick<Car, 'overrides' | 'baselines'>;
  } catch {
    return {};
  }
}
/** Parts and groups of figures that need not be there; a part begins with its kind and a name. */
const born: Readonly<Record<string, object>> = {
  drive: { kind: 'drive', name: 'Drive train' },
  radio: { kind: 'radio', name: 'Radio' },
};
/** Sets `path` ("motor.turns") in a copy of `car`; undefined takes an optional figure out, and its group with the last. */
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
  if (value === undefined && Object.keys(holder).every((key) => key === 'kind' || key === 'name'))
    delete holders[holders.length - 2]?.[keys[keys.length - 1]];
  return copy as unknown as Car;
}

export class Shelf {
  #car = $state.raw<Car>(marmot);
  #errors = $state.raw<Readonly<Record<string, string>>>({});
  /** Typed, but the car does not hold with it alone: the other figures of its group are still to come. */
  #waiting: Readonly<Record<string, unknown>> = {};
  #typed = $state.raw<Readonly<Record<string, string>>>({});
  #doubts = $derived(labelDoubts(this.#car));

  constructor(private readonly memory: Memory) {
    this.#car = readCar(memory);
    this.#typed = readTyped(memory);
  }
  get car(): Car {
    return this.#car;
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
  /** Takes over a field if the whole car still holds, together with what was typed before and waits for this one;
   *  else keeps the old value and the words. */
  edit(path: string, value: unknown, typed?: string): void {
    if (typed !== undefined) this.#keepTyped({ ...this.#typed, [path]: typed });
    const waiting = { ...this.#waiting, [path]: value };
    for (const tried of [waiting, { [path]: value }]) {
      const read = carSchema.safeParse(
        Object.entries(tried).reduce<Car>((car, [at, each]) => withField(car, at, each), this.#car),
      );
      if (read.success) return this.#take(read.data, Object.keys(tried));
    }
    this.#waiting = waiting;
    this.refuse(path, this.#wordsFor(path, value));
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
    const left = <T>(of: Readonly<Record<string, T>>) =>
      Object.fromEntries(Object.entries(of).filter(([path]) => !paths.includes(path)));
    [this.#errors, this.#waiting] = [left(this.#errors), left(this.#waiting)];
    this.replace(car);
  }
  #keepTyped(typed: Readonly<Record<string, string>>): void {
    this.#typed = typed;
    this.memory.setItem(typedKey, JSON.stringify(typed));
  }
  replace(car: Car): void {
    this.#car = car;
    this.memory.setItem('car', JSON.stringify(car));
    const { overrides, baselines } = car;
    this.memory.setItem(ownKey(car.name), JSON.stringify({ overrides, baselines }));
  }
  /** A car that the virtual rig drew anew: a person's own limits and its baselines come back by its name. */
  adopt(car: Car): void {
    const kept = carSchema.safeParse({ ...car, ...readOwn(this.memory, car.name) });
    this.replace(kept.success ? kept.data : car);
  }
}
