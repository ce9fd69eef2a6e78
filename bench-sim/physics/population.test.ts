// SPDX-License-Identifier: MIT
// The drawn cars: healthy ones inside what common practice allows (from memory, no source) with room to spare,
// labels near the truth, and each fault beyond it.
import { describe, expect, it } from 'vitest';
import { carSchema } from '#core/parts/part';
import { fullThrottle, hold, powerUp, steer } from '../../tests/support/driven-plant.ts';
import type { FaultName } from '../faults/faults.ts';
import { drawCar } from './population.ts';
import { CarPlant } from './whole-plant.ts';

const seeds = Array.from({ length: 40 }, (_, i) => i + 1);
const truthOf = (seed: number, fault?: FaultName, severity = 1) =>
  drawCar(seed, fault ? { [fault]: severity } : {}).plant.truth();
function ready(seed: number, fault?: FaultName) {
  const drawn = drawCar(seed, fault ? { [fault]: 1 } : {});
  const plant = drawn.plant as CarPlant;
  powerUp(plant, drawn.car);
  return { plant, car: drawn.car };
}

describe('healthy cars', () => {
  it.each(seeds)('car %d is inside its limits with room to spare', (seed) => {
    const { plant, car } = drawCar(seed);
    const truth = plant.truth();
    expect(carSchema.safeParse(car).success).toBe(true);
    expect(truth['source-resistance']).toBeLessThan(0.056);
    expect(truth['steady-drop']).toBeLessThan(0.05 * 0.95 * car.controller.railSettingV);
    expect(Math.abs(truth['rail-at-rest'] / car.controller.railSettingV - 1)).toBeLessThan(0.02);
    expect(truth['no-load-current']).toBeGreaterThan(1.9);
    expect(truth['no-load-current']).toBeLessThan(1.12 * car.motor.ratedNoLoadA!);
    expect(Math.abs(truth.kv / car.motor.ratedKvRpmPerV - 1)).toBeLessThan(0.035);
    expect(Math.abs(truth['stall-current'] / car.servo.ratedStallA! - 1)).toBeLessThan(0.1);
    expect(truth['no-load-speed'] * (8.4 / 7.4) * 1.14).toBeLessThan(car.motor.ratedSpeedRpm);
  });
  it.each(seeds.slice(0, 12))('car %d keeps its rail above the floor through bank and reversal', (seed) => {
    const { plant, car } = ready(seed);
    plant.inputs.loadMask = 7;
    hold(plant, 0.05);
    plant.inputs.loadMask = 0;
    hold(plant, 0.1);
    steer(plant, car, 40);
    hold(plant, 0.06);
    steer(plant, car, -40);
    hold(plant, 0.3);
    expect(plant.truth()['deepest-dip']).toBeGreaterThan(car.controller.railFloorV + 0.3);
  });
  it('differ from seed to seed, in parts and in labels', () => {
    expect(new Set(seeds.map((seed) => truthOf(seed).kv)).size).toBe(seeds.length);
    expect(new Set(seeds.map((seed) => drawCar(seed).car.motor.polePairs))).toEqual(new Set([1, 2]));
    expect(new Set(seeds.map((seed) => drawCar(seed).car.servo.ratedVoltageV))).toEqual(new Set([6, 7.4]));
  });
});

describe('faults', () => {
  it.each(['worn-bearings', 'weak-rotor', 'failing-servo-motor', 'soft-rail', 'rail-current-limit'] as const)(
    '%s at severity 0 changes nothing',
    (fault) => expect(truthOf(7, fault, 0)).toEqual(truthOf(7)),
  );
  it.each(seeds)('spoil the label of car %d in no way', (seed) => {
    expect(drawCar(seed, { 'weak-rotor': 1, 'soft-rail': 1 }).car).toEqual(drawCar(seed).car);
  });
  it.each(seeds)('take car %d beyond its limits', (seed) => {
    const { car } = drawCar(seed);
    const { motor, servo } = car;
    expect(truthOf(seed, 'worn-bearings')['no-load-current']).toBeGreaterThan(
      1.25 * 1.5 * motor.ratedNoLoadA!,
    );
    expect(truthOf(seed, 'weak-rotor').kv).toBeGreaterThan(1.09 * motor.ratedKvRpmPerV);
    expect(truthOf(seed, 'failing-servo-motor')['stall-current']).toBeLessThan(0.7 * servo.ratedStallA!);
    expect(truthOf(seed, 'soft-rail')['source-resistance']).toBeCloseTo(0.14, 9);
    expect(truthOf(seed, 'rail-current-limit')['steady-drop']).toBeGreaterThan(2);
  });
  it('collapse the rail under the bank when its limit is low', () => {
    const { plant } = ready(3, 'rail-current-limit');
    plant.inputs.loadMask = 7;
    hold(plant, 0.02);
    const { mean } = hold(plant, 0.01);
    expect(mean.railV).toBeCloseTo(plant.truth()['rail-at-rest'] - plant.truth()['steady-drop'], 1);
    expect(mean.railV).toBeLessThan(3);
  });
  it('silence Hall line A', () => {
    const { plant, car } = ready(3, 'dead-hall-line');
    fullThrottle(plant, car);
    const { edges } = hold(plant, 1);
    expect(edges.length).toBeGreaterThan(100);
    expect(edges.filter((edge) => edge.line === 0)).toEqual([]);
  });
  it('open the thermistors at motor and servo', () => {
    const { plant } = ready(3, 'open-thermistor');
    expect(plant.outputs().thermistorC.map((celsius) => celsius === null)).toEqual([
      true,
      true,
      false,
      false,
    ]);
  });
  it('let a loose block give way', () => {
    const firm = ready(3);
    const loose = ready(3, 'block-loose');
    const late = [firm, loose].map(({ plant, car }) => {
      plant.person('block');
      steer(plant, car, 12);
      hold(plant, 0.24);
      return hold(plant, 0.01).mean.railA;
    });
    expect(late[1]).toBeLessThan(0.5 * late[0]);
  });
});
