// SPDX-License-Identifier: MIT
// Drives a servo by itself through what the servo checks do, as short as their results allow: rest, a slow sweep, moves
// on the tyres, a push against either stop. Gives the model's true values afterwards.
import type { Car } from '#core/parts/part';
import { stopRad } from '#sim/physics/linkage';
import type { ServoStand } from '#sim/physics/servo-stand';

const frameMs = 20;
const neutralS = 1.5e-3;
const sweep = { lowS: 1.1e-3, highS: 1.9e-3, radPerS: (18 * Math.PI) / 180 } as const;
const locksInsideS = 30e-6;
const pushS = 16e-6;
/** What servo-end-points takes for a stop. */
const metA = 0.025;

export function drivenTruth(stand: ServoStand, car: Car): Readonly<Record<string, number>> {
  stand.hold(neutralS, 1400);
  slowSweep(stand);
  const holdA = scrub(stand);
  const share = (100 * stand.truth()['scrub-current']) / stallHere(car);
  stand.servo.linkage.hitch('bare', stand.servo.hornRad);
  const holds = stand.car.servo.linkage.holdsNm === Infinity;
  const stopsMet = holds || (met(stand, 'short') && met(stand, 'long')) ? 1 : 0;
  return { ...stand.truth(), 'scrub-share': share, 'scrub-hold': holdA, 'stops-met': stopsMet };
}
const stallHere = ({ servo, controller }: Car): number =>
  ((servo.ratedStallA ?? 1) * controller.railSettingV) / servo.ratedVoltageV;

/** In frames, from one side to the other. */
function slowSweep(stand: ServoStand): void {
  stand.hold(sweep.lowS, 600);
  const stepS = (sweep.radPerS * frameMs) / 1000 / stand.car.servo.radPerS;
  for (let at = sweep.lowS; at < sweep.highS; at += stepS) stand.hold(at, frameMs);
  stand.hold(sweep.highS, 80);
  stand.hold(neutralS, 300);
}
/** Three moves on the tyres; the holding current after the last. */
function scrub(stand: ServoStand): number {
  const { centreS, radPerS, linkage } = stand.car.servo;
  stand.servo.linkage.hitch('tyres', stand.servo.hornRad);
  const lock = (side: 'short' | 'long', sign: number) =>
    centreS + sign * (stopRad(linkage, 'bare', side) / radPerS - locksInsideS);
  const [low, high] = [lock('short', -1), lock('long', 1)];
  for (const at of [low, high, low, high]) stand.hold(at, 500);
  return heldA(stand, high);
}
function heldA(stand: ServoStand, pulseS: number): number {
  const beforeC = stand.servo.chargeC;
  stand.hold(pulseS, 30);
  return (stand.servo.chargeC - beforeC) / 0.03;
}
/** Does the current rise when the linkage is pushed a coarse step beyond its stop? */
function met(stand: ServoStand, side: 'short' | 'long'): boolean {
  const { centreS, radPerS, linkage } = stand.car.servo;
  const sign = side === 'short' ? -1 : 1;
  stand.hold(neutralS, 300);
  stand.servo.linkage.hitch('bare', stand.servo.hornRad);
  const stopS = centreS + (sign * stopRad(linkage, 'bare', side)) / radPerS;
  const free = stopS - sign * 2 * pushS;
  stand.hold(free, 250);
  const freeA = heldA(stand, free);
  stand.hold(stopS + sign * pushS, 80);
  return heldA(stand, stopS + sign * pushS) > freeA + metA;
}
