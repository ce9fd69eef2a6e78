// SPDX-License-Identifier: MIT
// True values of the results of radio, receiver and throttle range. Widths in us of true time.
import type { CarParameters, MotorParameters } from './parameters.ts';
import { jointLimit } from '#core/limits/joint-limits';
import { pairOhms } from './four-wire.ts';
import { widthAt } from './radio.ts';

const us = 1e6;
/** Current at which the heat of the joints is told. */
const raceA = 40;

interface Reached {
  readonly car: CarParameters;
  readonly radio: { readonly heldTrigger: number };
}
export function controlTruth({ car, radio }: Reached): Record<string, number> {
  return {
    ...radioTruth(car),
    ...failSafeTruth(car, radio.heldTrigger),
    ...jointTruth(car),
    ...windingTruth(car.motor),
    ...rangeTruth(car),
  };
}
function radioTruth({ radio }: CarParameters): Record<string, number> {
  const [left, centre, right] = radio.steeringS.map((s) => s * us);
  const [brake, neutral, full] = radio.throttleS.map((s) => s * us);
  return {
    'wheel-channel': radio.crossed ? 2 : 1,
    'steering-left': left,
    'steering-centre': centre,
    'steering-right': right,
    'steering-per-cent': Math.abs(right - left) / 200,
    'throttle-neutral': neutral,
    'throttle-full': full,
    'throttle-brake': brake,
    'throttle-travel': full - neutral,
    'brake-travel': neutral - brake,
    'radio-jitter': radio.jitterS * us,
    'radio-frames': 1 / radio.frameS,
  };
}
/** Per cent of the travel from neutral to full throttle. */
function failSafeTruth({ radio }: CarParameters, heldTrigger: number): Record<string, number> {
  const [, neutral, full] = radio.throttleS;
  const perCent = (trigger: number) =>
    (100 * (widthAt(trigger, radio.throttleS) - neutral)) / (full - neutral);
  return {
    'fail-safe-time': radio.failSafeS,
    'throttle-after-loss': perCent(radio.failSafeS <= 1 ? radio.failSafeTrigger : heldTrigger),
    'throttle-on-return': perCent(radio.staleS > 0 ? heldTrigger : 0),
  };
}
/** Ohms at 20 C in the order of the car's list. */
function jointTruth({ joints }: CarParameters): Record<string, number> {
  const probed = joints.filter(({ kind }) => kind !== 'plug');
  const shares = probed.map((joint) => joint.ohm / (jointLimit(joint).max ?? 1));
  return {
    ...Object.fromEntries(joints.map(({ ohm }, k) => [`joint-${k + 1}`, ohm])),
    'worst-joint': 100 * Math.max(...shares),
    'joints-heat': raceA ** 2 * probed.reduce((sum, { ohm }) => sum + ohm, 0),
  };
}

/** Ohms at 20 C; spread of the pairs in per cent of their mean. */
function windingTruth(motor: MotorParameters): Record<string, number> {
  const [ab, bc, ca] = pairOhms(motor);
  const spread = Math.max(ab, bc, ca) - Math.min(ab, bc, ca);
  return {
    'winding-ab': ab,
    'winding-bc': bc,
    'winding-ca': ca,
    'winding-mean': (ab + bc + ca) / 3,
    'winding-spread': (300 * spread) / (ab + bc + ca),
  };
}
/** Usual bus voltage of a motor without load, for the little duty that breaks its friction. */
const busV = 8.1;
/** How much of the last part of the travel counts for its growth. */
const lastShare = 0.03;

/** Per cent of the travel that the radio gives, from neutral to full throttle. */
function rangeTruth({ controller, motor, radio }: CarParameters): Record<string, number> {
  const { neutralS, highS, deadBand, fullAt, driverOhm } = controller;
  const [, given, full] = radio.throttleS;
  const share = (duty: number) => {
    const widthS = neutralS + (highS - neutralS) * (deadBand + duty * (fullAt - deadBand));
    return (widthS - given) / (full - given);
  };
  const breaksAway = ((motor.coulombNm / motor.fluxVs) * (motor.windingOhm + driverOhm)) / busV;
  const grows = (share(1) - (1 - lastShare)) / lastShare;
  return {
    'throttle-start': 100 * share(breaksAway),
    'throttle-full-at': 100 * share(1),
    'throttle-end-growth': 100 * Math.min(1, Math.max(0, grows)),
  };
}
