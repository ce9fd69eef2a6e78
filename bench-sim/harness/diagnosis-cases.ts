// SPDX-License-Identifier: MIT
// Simulated servos with one known cause each, and what the checks would find of them: servo and rail are driven
// without processor and link and asked for their true values; what the checks' intervals allow is added as chance. For
// learning and trying out the diagnosis of a hot servo.
import type { CauseId } from '#core/diagnosis/causes';
import { featuresOf, type CheckFindings, type Features } from '#core/diagnosis/features';
import { measured } from '#core/measurements/finding';
import { exact } from '#core/measurements/quantity';
import type { FaultName, Faults } from '#sim/faults/faults';
import { spoil } from '#sim/physics/fault-effects';
import { labelCar } from '#sim/physics/part-label';
import { drawParameters } from '#sim/physics/population';
import { ServoStand } from '#sim/physics/servo-stand';
import { seededRandom, type SeededRandom } from '#sim/seeded-random';
import { drawRigErrors } from '#sim/wiring/rig-errors';
import { drivenServo, type Driven } from './diagnosis-drive.ts';
import { StandBench } from './stand-bench.ts';

/** A car of the virtual bench whose servo runs hot for a known reason. */
export interface HotServo {
  readonly seed: number;
  readonly severity: number;
  readonly faults: Faults;
}
export interface DiagnosisCase {
  readonly seed: number;
  readonly cause: CauseId;
  readonly severity: number;
  readonly features: Features;
}
/** The fault of the virtual bench that is this cause, and between which severities it is drawn. */
const faultOf: Readonly<Record<CauseId, readonly [fault: FaultName, least: number, most: number] | null>> = {
  'binding-left': ['binding-left', 0.35, 1],
  'binding-right': ['binding-right', 0.35, 1],
  hunting: ['hunting-servo', 0.35, 1],
  'stiff-gear-train': ['stiff-gear-train', 0.35, 1],
  'tight-spot': ['tight-spot', 0.35, 1],
  // 6.5 to 7.2 V on a servo for 6 V: 8 to 20 % too much.
  'over-voltage': ['wrong-rail-setting', 0.35, 0.85],
  overload: ['heavy-scrub', 0.35, 1],
  'failing-motor': ['failing-servo-motor', 0.35, 1],
  // Below, it holds all that the tyres need and nothing slips.
  'slipping-horn': ['slipping-horn', 0.8, 1],
  'soft-rail': ['soft-rail', 0.35, 1],
  healthy: null,
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
};
/** A rail set too high is told only where the pack leaves it head-room: on cars whose servo is for 6 V. */
export function hotServo(cause: CauseId, wantedSeed: number): HotServo {
  const seed = cause === 'over-voltage' ? firstOfSixVolts(wantedSeed) : wantedSeed;
  const row = faultOf[cause];
  if (row === null) return { seed, severity: 0, faults: {} };
  const [fault, least, most] = row;
  const severity = seededRandom(seed, 'diagnosis').stream('severity').between(least, most);
  return { seed, severity, faults: { [fault]: severity } };
}
/** Of the cars from this seed on, each a thousand thousand apart. */
const firstOfSixVolts = (seed: number): number =>
  drawParameters(seed).servo.ratedV < 6.7 ? seed : firstOfSixVolts(seed + 1_000_000);

export async function diagnosisCase(cause: CauseId, wantedSeed: number): Promise<DiagnosisCase> {
  const { seed, severity, faults } = hotServo(cause, wantedSeed);
  const random = seededRandom(seed, 'diagnosis');
  const parameters = drawParameters(seed);
  const car = labelCar(seed, parameters);
  spoil(parameters, faults);
  const rig = drawRigErrors(seededRandom(seed, 'rig').stream('rig'));
  const bench = new StandBench(new ServoStand(parameters), car, rig, random.stream('bench'));
  const found = foundOf(await drivenServo(bench), random.stream('errors'));
  return { seed, cause, severity, features: featuresOf(found, car) };
}
/** True values with the checks' errors, as the findings of checks. */
function foundOf({ truth, ends }: Driven, random: SeededRandom): CheckFindings[] {
  const told = Object.entries(errors).map(([key, [share, absolute]]) => {
    const [check, id] = key.split('/');
    const value = truth[id] * (1 + share * random.gaussian()) + absolute * random.gaussian();
    const finding = measured({ id, title: id, unit: '' }, exact(value), { formula: '', evidence: [] });
    return { check, findings: [finding] };
  });
  return [...told, { check: 'servo-end-points', findings: ends }];
}
