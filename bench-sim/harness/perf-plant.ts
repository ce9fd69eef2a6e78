// SPDX-License-Identifier: MIT
// The plant of the virtual rig without the rig, driven as the rig drives it: how much of the time is physics. It
// knows no session and no firmware.
import type { Car } from '#core/parts/part';
import { drawCar } from '#sim/physics/population';
import type { Plant } from '#sim/wiring/plant';
import type { Benchmark } from './benchmark.ts';
import { cpuSeconds } from './cpu-time.ts';

export const perfSeed = 1;
export const partThrottle = 0.25;
/** As the wiring advances the plant. */
const chunkS = 24e-6;
const nothing = (): void => {};

/** `rig` runs the whole rig for a while with the motor spinning and tells the rig seconds. */
export function plantShare(car: Car, rig: () => Promise<number>): Benchmark {
  const { plant } = drawCar(perfSeed);
  const now = { chunks: 0 };
  spinUp(plant, car, now);
  return {
    id: 'plant-share',
    title: 'Share of the plant in the time of the rig, motor spinning',
    of: 'processor time of the plant alone',
    against: 'processor time of the whole rig',
    ratio: async () => {
      let rigS = 0;
      const wholeS = await cpuSeconds(async () => (rigS = await rig()));
      const plantS = await cpuSeconds(() => advance(plant, rigS, now));
      return plantS / wholeS;
    },
  };
}
function advance(plant: Plant, seconds: number, now: { chunks: number }): void {
  const end = now.chunks + Math.round(seconds / chunkS);
  while (now.chunks < end) plant.advance(++now.chunks * chunkS, nothing, nothing);
}
function spinUp(plant: Plant, car: Car, now: { chunks: number }): void {
  const { neutralUs, highUs } = car.controller.throttle;
  plant.inputs.steeringPulseS = 1.5e-3;
  plant.inputs.throttlePulseS = neutralUs * 1e-6;
  plant.inputs.feed = 'limited';
  advance(plant, 1, now);
  plant.inputs.feed = 'full';
  advance(plant, 3, now);
  plant.inputs.throttlePulseS = (neutralUs + partThrottle * (highUs - neutralUs)) * 1e-6;
  advance(plant, 0.5, now);
}
