// SPDX-License-Identifier: MIT
// The whole plant: the same figures however it is called, energy kept, what a person does, and the order of a
// power-up.
import { describe, expect, it } from 'vitest';
import { fullThrottle, hold, powerUp, steer } from '../../tests/support/driven-plant.ts';
import type { Faults } from '../faults/faults.ts';
import type { HallEdge } from '../wiring/plant.ts';
import { drawCar } from './population.ts';
import { CarPlant, stepS } from './whole-plant.ts';

function draw(seed: number, faults: Faults = {}) {
  const drawn = drawCar(seed, faults);
  return { ...drawn, plant: drawn.plant as CarPlant };
}
function story(seed: number, callS: number): readonly unknown[] {
  const { plant, car } = draw(seed);
  const edges: HallEdge[] = [];
  const part = (seconds: number) => edges.push(...hold(plant, seconds, callS).edges);
  plant.inputs.throttlePulseS = car.controller.throttle.neutralUs * 1e-6;
  plant.inputs.steeringPulseS = 1.5e-3;
  plant.inputs.feed = 'limited';
  part(0.6);
  plant.inputs.feed = 'full';
  part(2.4);
  fullThrottle(plant, car);
  part(0.48);
  plant.inputs.loadMask = 7;
  part(0.024);
  return [structuredClone(plant.outputs()), edges, plant.truth()];
}

describe('the grid', () => {
  it('gives the same bytes for the same seed', () => {
    expect(JSON.stringify(story(5, 24e-6))).toBe(JSON.stringify(story(5, 24e-6)));
  });
  it('gives the same however often it is asked', () => {
    expect(JSON.stringify(story(5, 24e-6))).toBe(JSON.stringify(story(5, 104e-6)));
  });
  it('reaches the time asked for, and less than a step more', () => {
    const { plant } = draw(1);
    for (const timeS of [26e-6, 27e-6, 52e-6, 1.2345e-3]) {
      plant.advance(
        timeS,
        () => {},
        () => {},
      );
      expect(plant.timeS).toBeGreaterThanOrEqual(timeS - 1e-11);
      expect(plant.timeS).toBeLessThan(timeS + stepS);
    }
  });
});

describe('power-up', () => {
  it('charges the capacitor within a second, wakes, raises the rail, arms', () => {
    const { plant, car } = draw(2);
    plant.inputs.throttlePulseS = car.controller.throttle.neutralUs * 1e-6;
    plant.inputs.feed = 'limited';
    let highestV = 0;
    hold(plant, 1, 24e-6, (seen) => (highestV = Math.max(highestV, seen.controllerV)));
    expect(highestV).toBeGreaterThan(0.95 * plant.outputs().packV);
    plant.inputs.feed = 'full';
    hold(plant, 3);
    expect(plant.controller.state).toBe('armed');
    expect(plant.outputs().railV).toBeCloseTo(plant.truth()['rail-at-rest'], 2);
  });
  it('keeps a motor still that is told to go too early', () => {
    const { plant, car } = draw(2);
    plant.inputs.feed = 'full';
    fullThrottle(plant, car);
    expect(hold(plant, 4).edges.filter((edge) => edge.timeS > 1)).toEqual([]);
  });
});

describe('energy', () => {
  it('of a spin-up: from the bus = heat + friction + motion', () => {
    const { plant, car } = draw(4);
    powerUp(plant, car);
    fullThrottle(plant, car);
    const { motor, line } = plant;
    const { inertiaKgM2, inductanceH } = plant.car.motor;
    const loopOhm = motor.windingOhm + plant.car.controller.driverOhm;
    let usedJ = 0;
    let speed = motor.speedRadS;
    let currentA = motor.currentA;
    const startJ = (inertiaKgM2 * speed ** 2) / 2;
    let busV = line.busV;
    hold(plant, 0.5, 24e-6, () => {
      const meanA = (currentA + motor.currentA) / 2;
      const meanRadS = (speed + motor.speedRadS) / 2;
      const heatW = meanA ** 2 * loopOhm + motor.lossNm(meanRadS) * meanRadS;
      usedJ += (motor.busA * busV - heatW) * stepS;
      [speed, currentA, busV] = [motor.speedRadS, motor.currentA, line.busV];
    });
    const storedJ = (inertiaKgM2 * speed ** 2 + inductanceH * currentA ** 2) / 2 - startJ;
    expect(storedJ).toBeGreaterThan(1);
    expect(usedJ / storedJ).toBeCloseTo(1, 2);
  });
  it('of the whole car at full throttle: pack = rail input + idle + motor + leads', () => {
    const { plant, car } = draw(4);
    powerUp(plant, car);
    fullThrottle(plant, car);
    hold(plant, 2);
    const { packA, packV } = plant.outputs();
    const { motor, line, rail, controller } = plant;
    const lineOhm = plant.car.line.feedOhm + plant.car.line.postOhm;
    const usedW = (motor.busA + rail.inputA(line.busV) + controller.drawA(line.busV)) * line.busV;
    expect(packA * packV).toBeCloseTo(usedW + packA ** 2 * lineOhm, 2);
    const shaftW = motor.lossNm(motor.speedRadS) * motor.speedRadS;
    const copperW = motor.currentA ** 2 * (motor.windingOhm + plant.car.controller.driverOhm);
    expect(motor.busA * line.busV).toBeCloseTo(shaftW + copperW, 1);
  });
});

describe('the person', () => {
  it('lays a block at the horn that stops it, and takes it away', () => {
    const { plant, car } = draw(6);
    powerUp(plant, car);
    plant.person('Lay the horn against the block.');
    steer(plant, car, 20);
    hold(plant, 0.25);
    expect(plant.outputs().railA).toBeGreaterThan(0.8 * car.servo.ratedStallA!);
    plant.person('Take the block away.');
    hold(plant, 0.4);
    expect(plant.outputs().railA).toBeLessThan(0.1);
  });
  it('switches the controller off: rail and Hall lines go', () => {
    const { plant, car } = draw(6);
    powerUp(plant, car);
    plant.person('Switch the controller off.');
    hold(plant, 0.5);
    expect(plant.outputs().railV).toBeLessThan(0.5);
    expect(plant.outputs().hall).toEqual([false, false, false]);
  });
  it('does nothing on words that mean nothing here', () => {
    const { plant } = draw(6);
    plant.person('Whistle.');
    expect(plant.servo.blockRad).toBeNull();
    expect(plant.controller.switchedOn).toBe(true);
  });
});
