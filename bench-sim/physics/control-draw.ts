// SPDX-License-Identifier: MIT
// Draws radio and receiver of a healthy car: its speed controller has learnt the throttle range of this very radio.
// Ranges from memory.
import type { SeededRandom } from '../seeded-random.ts';
import type { RadioParameters, SpeedControllerParameters } from './parameters.ts';

export function drawRadio(random: SeededRandom, controller: SpeedControllerParameters): RadioParameters {
  const centreS = 1.5e-3 + random.between(-10e-6, 10e-6);
  const travel = () => random.between(350e-6, 450e-6);
  const leftIsShort = random.unit() < 0.5;
  const ends = [centreS - travel(), centreS + travel()] as const;
  return {
    frameS: random.between(11e-3, 22e-3),
    jitterS: random.between(0.8e-6, 2e-6),
    steeringS: leftIsShort ? [ends[0], centreS, ends[1]] : [ends[1], centreS, ends[0]],
    throttleS: [controller.lowS, controller.neutralS, controller.highS],
    crossed: false,
    startS: random.between(0.15, 0.4),
    failSafeS: random.between(0.25, 0.55),
    failSafeTrigger: random.unit() < 0.7 ? 0 : -0.4,
    linkS: random.between(0.4, 1.5),
    staleS: 0,
    noiseSeed: random.uint32(),
  };
}
