// SPDX-License-Identifier: MIT
// Spoils a healthy car by the named faults. Faults of the cable and of the stop line are made elsewhere.
import { severityOf, type FaultName, type Faults } from '../faults/faults.ts';
import { controlEffects } from './control-effects.ts';
import { linkageEffects } from './linkage-effects.ts';
import { motorEffects } from './motor-effects.ts';
import type { CarParameters } from './parameters.ts';
import { servoEffects, servoKinds } from './servo-effects.ts';
import { supplyEffects } from './supply-effects.ts';

/** What each fault does to the car at a severity above 0. */
export type Effects = Partial<Record<FaultName, (car: CarParameters, severity: number) => void>>;

const effects = { ...supplyEffects, ...servoEffects, ...linkageEffects, ...motorEffects, ...controlEffects };

export const spoil = (car: CarParameters, faults: Faults): void => change(car, faults, effects);
/** What is no fault but another kind of part: made before the labels are written. */
export const makeKind = (car: CarParameters, faults: Faults): void => change(car, faults, servoKinds);

function change(car: CarParameters, faults: Faults, by: Effects): void {
  for (const [name, effect] of Object.entries(by)) {
    const severity = severityOf(faults, name as FaultName);
    if (severity > 0) effect(car, severity);
  }
}
