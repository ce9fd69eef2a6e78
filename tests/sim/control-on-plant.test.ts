// SPDX-License-Identifier: MIT
// Joints, winding and throttle range on the bare plant (tests/support/plant-bench.ts): the truth inside every interval of
// a sound car, and each fault found at severity 1 by the result that it spoils.
import { describe, expect, it } from 'vitest';
import type { Check } from '#checks/check';
import { checkById } from '#checks/index';
import { withProposal } from '#checks/proposal';
import { faultTable, type FaultName, type Faults } from '#sim/faults/faults';
import { outside, runOnPlant } from '../support/plant-bench.ts';

const on = (id: string, seed: number, faults: Faults = {}) =>
  runOnPlant(checkById(id) as Check, seed, faults);

describe('sound cars', () => {
  it.each([
    ['joint-drop', 12],
    ['winding-balance', 1],
    ['winding-balance', 4],
    ['throttle-range', 5],
  ])('pass %s with the truth inside, seed %i', async (id, seed) => {
    const run = await on(id, seed);
    expect(new Set(Object.values(run.verdicts))).toEqual(new Set(['pass']));
    expect(outside(run)).toEqual([]);
  });
  it('measure a winding that the motor then goes by, within its uncertainty of the truth', async () => {
    const { findings, truth, bench } = await on('winding-balance', 3);
    const check = checkById('winding-balance')!;
    const { motor } = withProposal(bench.car, check.proposes!(findings, bench.samples.clock)!);
    const { ohm, u } = motor.windingOhm!;
    expect(Math.abs(ohm - truth['winding-mean'])).toBeLessThan(2 * u);
    expect(u / ohm).toBeLessThan(0.02);
  });
});
describe('a faulty car', () => {
  it.each<FaultName>(['bad-joint', 'unbalanced-winding', 'unlearnt-throttle-range'])(
    '%s fails by the result that it spoils',
    async (name) => {
      const { check, result } = faultTable.find((fault) => fault.name === name)!;
      const run = await on(check, 2, { [name]: 1 });
      expect(run.verdicts[result!]).toBe('fail');
      expect(outside(run)).toEqual([]);
    },
  );
});
