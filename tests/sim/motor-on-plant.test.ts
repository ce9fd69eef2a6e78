// SPDX-License-Identifier: MIT
// The checks of motor, sensor cable and mesh on the bare plant (tests/support/plant-bench.ts): the truth inside every
// interval of a sound car, and each fault of the area found at severity 1.
import { describe, expect, it } from 'vitest';
import { checkById } from '#checks/index';
import type { Check } from '#checks/check';
import type { Measured } from '#core/measurements/measurement';
import type { Faults } from '#sim/faults/faults';
import type { CarPlant } from '#sim/physics/whole-plant';
import { outside, runOnPlant } from '../support/plant-bench.ts';

const on = (id: string, seed: number, faults: Faults = {}) =>
  runOnPlant(checkById(id) as Check, seed, faults);

describe('sound cars', () => {
  it.each(['sensor-cable', 'motor-coastdown', 'timing-sweep'])(
    'pass %s with the truth inside',
    async (id) => {
      const run = await on(id, 5);
      expect(new Set(Object.values(run.verdicts))).toEqual(new Set(['pass']));
      expect(outside(run)).toEqual([]);
    },
  );
});
describe('sensor-cable finds', () => {
  it.each([
    ['dead-hall-line-b', 'hall-liveness'],
    ['swapped-hall-lines', 'hall-order'],
    ['noisy-hall-line', 'hall-extra-edges'],
    ['uneven-hall-duty', 'hall-b-longer-half'],
    ['loose-sensor-plug', 'hall-drop-outs'],
    ['thermistor-short', 'sensor-thermistor-lost'],
    ['thermistor-loose', 'sensor-thermistor-lost'],
  ] as const)('%s in %s', async (fault, result) => {
    const { verdicts } = await on('sensor-cable', 2, { [fault]: 1 });
    expect(verdicts[result]).toBe('fail');
  });
  it('asks once more for the running direction before it calls lines swapped', async () => {
    const { bench } = await on('sensor-cable', 2, { 'swapped-hall-lines': 1 });
    expect(bench.asked.filter((words) => /running direction/.test(words))).toHaveLength(2);
    expect(bench.asked[1]).toMatch(/opposite direction/);
  });
});
describe('motor-coastdown', () => {
  it('fails worn bearings by the drag torque', async () => {
    const run = await on('motor-coastdown', 2, { 'worn-bearings': 1 });
    expect(run.verdicts['coast-drag-torque']).toBe('fail');
    expect(outside(run)).toEqual([]);
  });
  it('measures nothing where the drag brake was left on, and names it', async () => {
    const { findings } = await on('motor-coastdown', 2, { 'drag-brake-left-on': 1 });
    for (const finding of findings)
      expect(finding).toMatchObject({ reason: expect.stringMatching(/drag brake/) });
  });
});
describe('motor-no-load', () => {
  it('fails an end bell 20 degrees further than the label holds for', async () => {
    const { verdicts } = await on('motor-no-load', 1, { 'advanced-timing': 1 });
    expect(verdicts['no-load-current']).toBe('fail');
  });
  it('does not call a motor faulty that is 30 K warmer than the room', async () => {
    const { verdicts } = await on('motor-no-load', 1, { 'hot-motor': 1 });
    expect(new Set(Object.values(verdicts))).toEqual(new Set(['pass']));
  });
  it('measures nothing with the pole pairs entered wrongly, and says so', async () => {
    const { findings } = await on('motor-no-load', 1, { 'wrong-pole-pairs': 1 });
    for (const finding of findings)
      expect(finding).toMatchObject({ reason: expect.stringMatching(/pole pairs/) });
  });
});
describe('gear-mesh', () => {
  it('finds the tight place of the spur within 15 degrees, and the hand stops there', async () => {
    const run = await on('gear-mesh', 3, { 'tight-mesh': 1 });
    expect(run.verdicts['spur-variation']).toBe('fail');
    expect(run.verdicts['pinion-variation']).toBe('pass');
    const place = run.findings.find(({ id }) => id === 'tight-place') as Measured;
    expect(Math.abs(place.value - run.truth['tight-place'])).toBeLessThan(15);
    const rests = (((run.bench.plant as CarPlant).train.spurRad * 180) / Math.PI) % 360;
    expect(Math.abs(rests - run.truth['tight-place'])).toBeLessThan(20);
  });
  it('tells a pinion off centre from a tight spur', async () => {
    const run = await on('gear-mesh', 3, { 'eccentric-pinion': 1 });
    expect(run.verdicts).toMatchObject({ 'spur-variation': 'pass', 'pinion-variation': 'fail' });
  });
});
