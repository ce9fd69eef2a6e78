// SPDX-License-Identifier: MIT
// Simulated servos with one known cause each, and what the checks would find of them: servo and rail are driven,
// without processor and link, through rest, a slow sweep and moves on the tyres, and asked for its true values; what
// the checks' intervals allow is added as chance. For learning and trying out the diagnosis of a hot servo.
import type { CauseId } from '#core/diagnosis/causes';
import { featuresOf, type CheckFindings, type Features } from '#core/diagnosis/features';
import { measured } from '#core/measurements/finding';
import { exact } from '#core/measurements/quantity';
import type { FaultName } from '#sim/faults/faults';
import { spoil } from '#sim/physics/fault-effects';
import type { CarParameters } from '#sim/physics/parameters';
import { labelCar } from '#sim/physics/part-label';
import { drawParameters } from '#sim/physics/population';
import { ServoStand } from '#sim/physics/servo-stand';
import { seededRandom, type SeededRandom } from '#sim/seeded-random';
import { drivenTruth } from './diagnosis-drive.ts';

export interface DiagnosisCase {
  readonly seed: number;
  readonly cause: CauseId;
  readonly severity: number;
  readonly features: Features;
}
/** The fault of the virtual bench that is this cause, and from which severity on it counts as one. */
const faults: Readonly<Partial<Record<CauseId, readonly [FaultName, number]>>> = {
  'binding-left': ['binding-left', 0.35],
  'binding-right': ['binding-right', 0.35],
  hunting: ['hunting-servo', 0.35],
  'stiff-gear-train': ['stiff-gear-train', 0.35],
  'tight-spot': ['tight-spot', 0.35],
  overload: ['heavy-scrub', 0.35],
  'failing-motor': ['failing-servo-motor', 0.35],
  'slipping-horn': ['slipping-horn', 0.75],
  'soft-rail': ['soft-rail', 0.35],
};
/** Standard deviation of what a check finds: share of the value, and absolute. From the checks' usual intervals. */
const errors: Readonly<Record<string, readonly [share: number, absolute: number]>> = {
  'servo-idle/centre-current': [0.02, 0.002],
  'servo-idle/hunting-current': [0.03, 0.002],
  'servo-no-load/moving-current': [0.02, 0.003],
  'servo-no-load/sweep-current': [0.02, 0.002],
  'servo-no-load/tight-spot': [0.03, 0],
  'servo-speed/time-per-60-rated': [0.015, 0],
  'servo-stall/stall-current': [0.01, 0],
  'rail-setting/rail-setting': [0.004, 0],
  'rail-sag/source-resistance': [0.03, 0.001],
  'servo-scrub/scrub-share': [0.015, 0.1],
  'servo-scrub/scrub-hold': [0.02, 0.003],
  'servo-scrub/scrub-dip': [0.004, 0.02],
  'servo-end-points/travel-left': [0.005, 0.3],
  'servo-end-points/travel-right': [0.005, 0.3],
};
/** A servo on a rail above its rating: only where the pack leaves head-room to tell. */
const overRailAbove = [1.08, 1.2] as const;

export function diagnosisCase(cause: CauseId, wantedSeed: number): DiagnosisCase {
  const seed = cause === 'over-voltage' ? firstOfSixVolts(wantedSeed) : wantedSeed;
  const random = seededRandom(seed, 'diagnosis');
  const parameters = drawParameters(seed);
  const car = labelCar(seed, parameters);
  const severity = spoilFor(cause, parameters, random.stream('severity'));
  const stand = new ServoStand(parameters);
  const truth = drivenTruth(stand, car);
  return { seed, cause, severity, features: featuresOf(foundOf(truth, random.stream('errors')), car) };
}
/** Of the cars from this seed on, each a thousand thousand apart, the first with a rail of 6 V. */
function firstOfSixVolts(seed: number): number {
  return drawParameters(seed).servo.ratedV < 6.7 ? seed : firstOfSixVolts(seed + 1_000_000);
}
function spoilFor(cause: CauseId, car: CarParameters, random: SeededRandom): number {
  if (cause === 'over-voltage') {
    const above = random.between(...overRailAbove);
    car.rail.settingV *= above;
    return above - 1;
  }
  const fault = faults[cause];
  if (!fault) return 0;
  const severity = random.between(fault[1], 1);
  spoil(car, { [fault[0]]: severity });
  return severity;
}
/** True values with the checks' errors, as the findings of checks. */
function foundOf(truth: Readonly<Record<string, number>>, random: SeededRandom): CheckFindings[] {
  const keys = Object.keys(errors);
  const checks = [...new Set(keys.map((key) => key.split('/')[0]))];
  const told = (key: string) => {
    const id = key.split('/')[1];
    const [share, absolute] = errors[key];
    const value = truth[id] * (1 + share * random.gaussian()) + absolute * random.gaussian();
    return measured({ id, title: id, unit: '' }, exact(value), { formula: '', evidence: [] });
  };
  const stopsMet = truth['stops-met'] > 0;
  return checks.map((check) => ({
    check,
    findings:
      check === 'servo-end-points' && !stopsMet
        ? [{ measured: false, id: 'end-point-left', title: '', unit: 'us', reason: 'No stop was met' }]
        : [
            ...keys.filter((key) => key.startsWith(`${check}/`)).map(told),
            ...(check === 'servo-end-points' ? ends() : []),
          ],
  }));
}
const ends = () =>
  ['end-point-left', 'end-point-right'].map((id) =>
    measured({ id, title: id, unit: 'us' }, exact(1500), { formula: '', evidence: [] }),
  );
