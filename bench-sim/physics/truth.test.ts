// SPDX-License-Identifier: MIT
// Truth against the plant it speaks for: an ideal instrument at the plant's taps must find what the equations
// at rest say, and the identities of the permanent-magnet motor must hold in it.
import { describe, expect, it } from 'vitest';
import { fullThrottle, hold, powerUp, steer } from '../../tests/support/driven-plant.ts';
import { copperFactor, fluxFactor } from './copper.ts';
import { drawCar } from './population.ts';
import { noLoadState } from './steady-state.ts';
import { CarPlant } from './whole-plant.ts';

const seeds = [1, 2, 3, 4, 5, 6];
function ready(seed: number) {
  const drawn = drawCar(seed);
  const plant = drawn.plant as CarPlant;
  powerUp(plant, drawn.car);
  return { plant, car: drawn.car };
}

describe.each(seeds)('car %d', (seed) => {
  it('runs without load as the steady state says, on its own bus and at its own heat', () => {
    const { plant, car } = ready(seed);
    const idleA = hold(plant, 0.2).mean.packA;
    fullThrottle(plant, car);
    hold(plant, 4);
    const { edges, mean } = hold(plant, 0.5);
    const { motor, controller } = plant.car;
    const { innerC, outerC } = plant.warmth.motor;
    const asItIs = { ...motor, fluxVs: motor.fluxVs * fluxFactor(outerC) };
    const ohm = motor.windingOhm * copperFactor(innerC) + controller.driverOhm;
    const expected = noLoadState(asItIs, ohm, plant.line.busV);
    const rises = edges.filter((edge) => edge.line === 1 && edge.level);
    const turns = (rises.length - 1) / motor.polePairs;
    const rpm = (turns * 60) / (rises.at(-1)!.timeS - rises[0].timeS);
    expect((mean.packA - idleA) / expected.currentA).toBeCloseTo(1, 2);
    expect(rpm / expected.speedRpm).toBeCloseTo(1, 3);
    const kv = rpm / (plant.line.busV - plant.motor.currentA * ohm);
    expect((kv * fluxFactor(outerC)) / plant.truth().kv).toBeCloseTo(1, 3);
  });
  it('stalls at what rated voltage over resistance says', () => {
    const { plant, car } = ready(seed);
    plant.person('block');
    steer(plant, car, 25);
    const at: number[] = [];
    hold(plant, 0.06);
    for (let k = 0; k < 5; k++) {
      const { mean } = hold(plant, 0.004);
      const plugV = mean.railV - plant.car.railShuntOhm * mean.railA;
      at.push(((mean.railA - plant.car.servo.electronicsA) * plant.car.servo.ratedV) / plugV);
    }
    const backToStart = at[0] + ((at[0] - at[4]) / 16) * 52;
    expect(backToStart / plant.truth()['stall-current']).toBeCloseTo(1, 2);
  });
  it('has the source resistance, the drop and the setting that its taps show', () => {
    const { plant } = ready(seed);
    const empty = hold(plant, 0.01).mean;
    plant.inputs.loadMask = 7;
    hold(plant, 0.01);
    const loaded = hold(plant, 0.01).mean;
    const truth = plant.truth();
    expect((empty.railV - loaded.railV) / (loaded.railA - empty.railA)).toBeCloseTo(
      truth['source-resistance'],
      4,
    );
    expect(empty.railV - loaded.railV).toBeCloseTo(truth['steady-drop'], 3);
    expect(empty.railV).toBeCloseTo(truth['rail-at-rest'], 3);
  });
});

describe('events of the rail', () => {
  it('are absent before the first', () => {
    const { plant } = ready(1);
    expect(plant.truth()).not.toHaveProperty('deepest-dip');
    expect(plant.truth()).not.toHaveProperty('recovery');
  });
  it('have a dip a little shallower than the unfiltered one, and a recovery of its length', () => {
    const { plant } = ready(1);
    plant.inputs.loadMask = 7;
    const { lowestRailV } = hold(plant, 0.02);
    plant.inputs.loadMask = 0;
    hold(plant, 0.05);
    const truth = plant.truth();
    expect(truth['deepest-dip']).toBeGreaterThanOrEqual(lowestRailV);
    expect(truth['deepest-dip']).toBeLessThan(truth['rail-at-rest'] - truth['steady-drop']);
    expect(truth.recovery).toBeLessThan(0.005);
  });
  it('keep the hardest, and forget what power-off does', () => {
    const { plant } = ready(1);
    plant.inputs.loadMask = 7;
    hold(plant, 0.02);
    const deepest = plant.truth()['deepest-dip'];
    plant.inputs.loadMask = 0;
    hold(plant, 0.02);
    plant.inputs.loadMask = 1;
    hold(plant, 0.02);
    plant.inputs.feed = 'off';
    hold(plant, 0.2);
    expect(plant.truth()['deepest-dip']).toBe(deepest);
  });
});
