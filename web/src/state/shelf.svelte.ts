// SPDX-License-Identifier: MIT
// The car on the bench and its parts' ratings, edited as text and checked by the parts' own schemas. A field
// that does not hold keeps its text and gets the schema's words; the car changes only as a whole.
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
const ownKey = (name: string) => `own limits of ${name}`;
function readOwn(memory: Memory, name: string): Pick<Car, 'overrides' | 'baselines'> {
  try {
    return JSON.parse(memory.getItem(ownKey(name)) ?? '{}') as Pick<Car, 'overrides' | 'baselines'>;
  } catch {
    return {};
  }
}
/** Sets `path` ("motor.turns") in a copy of `car`; empty text takes an optional figure out. */
export function withField(car: Car, path: string, value: unknown): unknown {
  const copy = structuredClone(car) as unknown as Record<string, unknown>;
  const keys = path.split('.');
  const last = keys.pop()!;
  const holder = keys.reduce((at, key) => at[key] as Record<string, unknown>, copy);
  if (value === undefined) delete holder[last];
  else holder[last] = value;
  return copy;
}

export class Shelf {
  #car = $state.raw<Car>(marmot);
  #errors = $state.raw<Readonly<Record<string, string>>>({});

  constructor(private readonly memory: Memory) {
    this.#car = readCar(memory);
  }
  get car(): Car {
    return this.#car;
  }
  error(path: string): string | undefined {
    return this.#errors[path];
  }
  /** Takes over a field if the whole car still holds; else keeps the old value and the words. */
  edit(path: string, value: unknown): void {
    const result = carSchema.safeParse(withField(this.#car, path, value));
    const { [path]: _gone, ...others } = this.#errors;
    if (result.success) {
      this.#errors = others;
      this.replace(result.data);
    } else {
      const issue =
        result.error.issues.find((each) => each.path.join('.') === path) ?? result.error.issues[0];
      this.#errors = { ...others, [path]: issue.message };
    }
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
