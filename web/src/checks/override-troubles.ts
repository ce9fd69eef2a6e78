// SPDX-License-Identifier: MIT
// What is wrong with a car's own limits and baselines in view of the checks there are: results no check has, slips
// of the unit. The schema sees their form only. For forms and files; an empty list means all of them hold.
import { overrideTrouble, type Overridable } from '#core/limits/override';
import type { Car } from '#core/parts/part';
import type { RigDescription } from '#core/samples/rig-description';
import { checks } from './index.ts';

/** Every result an override may be of, with the limit it has without one. */
export function overridables(car: Car, rig: RigDescription): Overridable[] {
  const without = { ...car, overrides: undefined };
  return checks.flatMap(({ id, results, more, limits }) => {
    const usual = limits(without, rig);
    return [...results, ...(more?.(car) ?? [])].map((result) => ({
      key: `${id}/${result.id}`,
      unit: result.unit,
      min: usual[result.id]?.min,
      max: usual[result.id]?.max,
    }));
  });
}
export function overrideTroubles(car: Car, rig: RigDescription): string[] {
  const known = overridables(car, rig);
  const strays = (car.baselines ?? []).filter(
    ({ checkResultId }) => !known.some(({ key }) => key === checkResultId),
  );
  return [
    ...(car.overrides ?? []).flatMap((override) => overrideTrouble(override, known) ?? []),
    ...strays.map(
      ({ checkResultId }) => `There is a baseline of "${checkResultId}", and no check has that result.`,
    ),
  ];
}
