// SPDX-License-Identifier: MIT
// Set-up values of a car with their days: what was changed, from which figures to which, when, and by which run's
// proposal. Written by comparing a car before and after; nothing is ever taken out. Pure.
import { z } from 'zod';
import type { Car } from './part.ts';

export const setUpKinds = ['end-points', 'gearing', 'timing', 'rail-setting'] as const;
export type SetUpKind = (typeof setUpKinds)[number];
const entrySchema = z.object({
  what: z.enum(setUpKinds, { error: `a set-up value is one of ${setUpKinds.join(', ')}` }),
  /** SI units, named in the key; empty where the value was taken out. */
  figures: z.record(z.string(), z.number({ error: 'a set-up value is a number' })),
  at: z.iso.datetime({ error: 'a set-up value needs its day and time, such as 2026-11-27T20:15:00Z' }),
  /** The run that proposed it. */
  runId: z.string().min(1).optional(),
});
/** Oldest first. */
export const setUpSchema = z.array(entrySchema);
export type SetUpEntry = z.infer<typeof entrySchema>;
type Figures = SetUpEntry['figures'];

function figuresOf({ servo, drive, motor, controller }: Car, what: SetUpKind): Figures {
  if (what === 'end-points') return { ...servo.endPoints };
  if (what === 'timing')
    return motor.timingDegrees === undefined ? {} : { timingDegrees: motor.timingDegrees };
  if (what === 'rail-setting') return { railSettingV: controller.railSettingV };
  if (!drive) return {};
  const { pinionTeeth, spurTeeth, internalRatio, tyreDiameterM } = drive;
  return { pinionTeeth, spurTeeth, internalRatio, tyreDiameterM };
}
const same = (a: Figures, b: Figures): boolean => {
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((key) => a[key] === b[key]);
};
/** `after` with an entry for each set-up value that differs from `before`. `at`: ISO 8601. */
export function datedSetUp(before: Car, after: Car, at: string, runId?: string): Car {
  const changed = setUpKinds.filter((what) => !same(figuresOf(before, what), figuresOf(after, what)));
  if (changed.length === 0) return after;
  const entries = changed.map((what) => ({
    what,
    figures: figuresOf(after, what),
    at,
    ...(runId && { runId }),
  }));
  return { ...after, setUp: [...(after.setUp ?? []), ...entries] };
}
/** When the value of today was set; undefined where nobody noted it. */
export function newestSetUp({ setUp = [] }: Pick<Car, 'setUp'>, what: SetUpKind): SetUpEntry | undefined {
  return setUp.findLast((entry) => entry.what === what);
}
