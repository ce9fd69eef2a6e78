// SPDX-License-Identifier: MIT
// True values of the results of radio, receiver and throttle range. Widths in us of true time.
import type { CarParameters } from './parameters.ts';
import { widthAt } from './radio.ts';

const us = 1e6;

interface Reached {
  readonly car: CarParameters;
  readonly radio: { readonly heldTrigger: number };
}
export function controlTruth({ car, radio }: Reached): Record<string, number> {
  return { ...radioTruth(car), ...failSafeTruth(car, radio.heldTrigger) };
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
