// SPDX-License-Identifier: MIT
// The checks of motor, sensor cable and mesh on the compiled firmware: what the rig allows, in the order that each check
// asks for it. Every fault of the area stands in motor-on-plant.test.ts, which costs a quarter.
import { describe, expect, it } from 'vitest';
import { checkById } from '#checks/index';
import type { Check } from '#checks/check';
import type { Faults } from '#sim/faults/faults';
import { runCell } from '../../bench-sim/harness/study-run.ts';

async function run(id: string, seed: number, faults: Faults = {}) {
  const [outcome] = await runCell(
    checkById(id) as Check,
    { check: id, seed, faults },
    { solved: false, calibrated: false },
  );
  return outcome;
}

describe('on the firmware', () => {
  it.each([
    ['sensor-cable', 4],
    ['motor-coastdown', 3],
  ] as const)('a sound car passes %s with the truth inside', async (id, seed) => {
    const { verdict, results, reason } = await run(id, seed);
    expect(verdict, reason).toBe('pass');
    for (const { id: name, interval, truth } of results) {
      if (truth === null || interval === null) continue;
      expect(truth, name).toBeGreaterThanOrEqual(interval[0]);
      expect(truth, name).toBeLessThanOrEqual(interval[1]);
    }
  });
  it('a tight mesh fails by the spur, told from the pinion', async () => {
    const { results } = await run('gear-mesh', 3, { 'tight-mesh': 1 });
    const verdictOf = (name: string) => results.find(({ id }) => id === name)?.verdict;
    expect(verdictOf('spur-variation')).toBe('fail');
    expect(verdictOf('pinion-variation')).toBe('pass');
  });
  it('two swapped Hall lines fail by the order', async () => {
    const { results } = await run('sensor-cable', 4, { 'swapped-hall-lines': 1 });
    expect(results.find(({ id }) => id === 'hall-order')?.verdict).toBe('fail');
  });
});
