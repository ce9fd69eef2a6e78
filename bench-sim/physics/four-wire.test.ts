// SPDX-License-Identifier: MIT
// Four wires at a part of the whole plant, against Ohm's law and star windings by hand; the pack plugged past the rig.
import { describe, expect, it } from 'vitest';
import { hold, powerUp } from '../../tests/support/driven-plant.ts';
import { copperFactor } from './copper.ts';
import { pairOhms } from './four-wire.ts';
import { drawCar } from './population.ts';
import { CarPlant } from './whole-plant.ts';

const plantOf = (seed: number, faults = {}) => drawCar(seed, faults).plant as CarPlant;
/** Probe volts and load amperes with the pack load on, less the volts with it off. */
function step(plant: CarPlant, words: string) {
  plant.person(words);
  hold(plant, 0.01);
  const restV = plant.outputs().probeV;
  plant.inputs.packLoad = true;
  hold(plant, 0.05);
  const loaded = { volts: plant.outputs().probeV - restV, amps: plant.line.loadA };
  plant.inputs.packLoad = false;
  hold(plant, 0.01);
  return { ...loaded, ohm: loaded.volts / loaded.amps, restV };
}
const healthy = plantOf(2);

describe('probe tips', () => {
  it('show nothing where they touch nothing', () => {
    const { volts, restV } = step(healthy, 'Probe tips laid aside');
    expect(volts).toBe(0);
    expect(restV).toBe(0);
  });
  it.each(healthy.car.joints.map((joint) => [joint.name, joint] as const))(
    'show the ohms of the %s',
    (name, joint) => {
      const { ohm, amps, restV } = step(healthy, `Load clips on either side, probe tips across the ${name}`);
      const warm = joint.kind === 'lead' ? copperFactor(healthy.car.ambientC) : 1;
      expect(ohm / (joint.ohm * warm)).toBeCloseTo(1, 9);
      expect(amps).toBeGreaterThan(13);
      expect(Math.abs(restV)).toBeLessThanOrEqual(20e-6);
    },
  );
  it('show two windings in series, warm as they are, and lower the current by what they add', () => {
    const bare = step(healthy, 'Probe tips across the minus plug of the pack').amps;
    const { ohm, amps } = step(healthy, 'Load clips on phases B and C, probe tips on the same posts');
    const { innerC } = healthy.warmth.motor;
    expect(ohm / (pairOhms(healthy.car.motor)[1] * copperFactor(innerC))).toBeCloseTo(1, 3);
    const loop = healthy.car.line.packLoadOhm + ohm;
    expect(amps / bare).toBeCloseTo(healthy.car.line.packLoadOhm / loop, 1);
  });
  it('go by the words for the jumper', () => {
    healthy.person('Set the jumper of the joint probe to x5.');
    expect(healthy.outputs().probeWide).toBe(true);
    healthy.person('Set the jumper of the joint probe to x50.');
    expect(healthy.outputs().probeWide).toBe(false);
  });
});
describe('star windings', () => {
  it('make pairs of two, whose mean is the winding phase to phase', () => {
    const motor = {
      ...healthy.car.motor,
      windingOhm: 0.02,
      phaseShare: [1.1, 1, 0.9] as [number, number, number],
    };
    pairOhms(motor).forEach((ohm, k) => expect(ohm).toBeCloseTo([0.021, 0.019, 0.02][k], 12));
  });
  it('with one off by 10 % differ by 5 % as pairs', () => {
    const pairs = pairOhms({ ...healthy.car.motor, windingOhm: 2, phaseShare: [1, 1.1, 1] });
    expect((Math.max(...pairs) - Math.min(...pairs)) / Math.min(...pairs)).toBeCloseTo(0.05, 9);
  });
  it('keep their mean with the drive when one is spoilt', () => {
    const { motor } = plantOf(2, { 'unbalanced-winding': 1 }).car;
    const [ab, bc, ca] = pairOhms(motor);
    expect((ab + bc + ca) / 3).toBeCloseTo(motor.windingOhm, 12);
    expect(motor.windingOhm / plantOf(2).car.motor.windingOhm).toBeCloseTo(1.1, 2);
  });
});
describe('a pack plugged straight into the car', () => {
  it("brings the rail up with the feed off, past the taps of the rig; the rig's own feed ends it", () => {
    const { plant: drawn, car } = drawCar(4);
    const plant = drawn as CarPlant;
    plant.person('Plug the pack straight into the car and switch the controller on');
    hold(plant, 1);
    expect(plant.outputs().railV).toBeGreaterThan(5.5);
    expect(plant.outputs()).toMatchObject({ packV: 0, controllerV: 0, packA: 0 });
    powerUp(plant, car);
    expect(plant.packStraight).toBe(false);
    expect(plant.outputs().packV).toBeGreaterThan(7);
  });
});
