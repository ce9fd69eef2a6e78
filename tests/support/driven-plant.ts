// SPDX-License-Identifier: MIT
// Drives a plant as the rig would, without a rig: powers it up, holds inputs for a time, keeps what was seen.
import type { Car } from '#core/parts/part';
import type { CarPlant } from '../../bench-sim/physics/whole-plant.ts';
import type { HallEdge, PlantOutputs } from '../../bench-sim/wiring/plant.ts';

export interface Held {
  readonly edges: readonly HallEdge[];
  readonly mean: Readonly<Record<'packA' | 'packV' | 'controllerV' | 'railV' | 'railA', number>>;
  readonly lowestRailV: number;
}
const watched = ['packA', 'packV', 'controllerV', 'railV', 'railA'] as const;

/** Runs for `seconds` in calls of `callS`. */
export function hold(
  plant: CarPlant,
  seconds: number,
  callS = 24e-6,
  each?: (o: PlantOutputs) => void,
): Held {
  const edges: HallEdge[] = [];
  const mean = { packA: 0, packV: 0, controllerV: 0, railV: 0, railA: 0 };
  let steps = 0;
  let lowestRailV = Infinity;
  const onStep = (seen: PlantOutputs) => {
    steps++;
    for (const name of watched) mean[name] += seen[name];
    lowestRailV = Math.min(lowestRailV, seen.railV);
    each?.(seen);
  };
  // The receiver's pulses are not the motor's.
  const keep = (edge: HallEdge) => void (edge.line < 3 && edges.push(edge));
  const startS = plant.timeS;
  for (let call = 1; call * callS < seconds + callS; call++) {
    plant.advance(startS + Math.min(call * callS, seconds), onStep, keep);
  }
  for (const name of watched) mean[name] /= steps;
  return { edges, mean, lowestRailV };
}
export function powerUp(plant: CarPlant, car: Car): void {
  plant.inputs.steeringPulseS = 1.5e-3;
  plant.inputs.throttlePulseS = car.controller.throttle.neutralUs * 1e-6;
  plant.inputs.feed = 'limited';
  hold(plant, 1);
  plant.inputs.feed = 'full';
  hold(plant, 3);
}
export function fullThrottle(plant: CarPlant, car: Car): void {
  plant.inputs.throttlePulseS = car.controller.throttle.highUs * 1e-6;
}
/** Commands the horn `degrees` beyond centre, by what the label says. */
export function steer(plant: CarPlant, car: Car, degrees: number): void {
  plant.inputs.steeringPulseS = (1500 + degrees / car.servo.degreesPerUs) * 1e-6;
}
