// SPDX-License-Identifier: MIT
// The plant solved at the conversion instants against the emulated firmware: the same codes, the same verdicts.
import { beforeAll, describe, expect, it } from 'vitest';
import { findCheck } from '#sim/harness/check-catalog';
import { makeTemplate, replayCell, type CheckTemplate } from '#sim/harness/study-replay';
import type { CellResult } from '#sim/harness/study-run';
import { drawCar } from '#sim/physics/population';
import { replayPlant } from '#sim/replay/plant-replay';
import { templateOf } from '#sim/replay/run-template';
import { seededRandom } from '#sim/seeded-random';

const seed = 3;
const check = findCheck('motor-no-load');
const asDeclared = { solved: true, calibrated: false };
const widthOf = ({ interval }: CellResult): number => (interval ? interval[1] - interval[0] : Number.NaN);
let template: CheckTemplate;
beforeAll(async () => {
  template = await makeTemplate(check, seed);
}, 240_000);

describe('a run solved without the processor', () => {
  it('has the same converter codes, each of them', () => {
    const { log } = template.run;
    const { codes } = replayPlant(log, drawCar(seed).plant, seededRandom(seed, 'rig'));
    const differing = codes.filter((code, k) => code !== log.codes.at(k)).length;
    expect(log.codes.length).toBeGreaterThan(100_000);
    expect(differing).toBe(0);
  });
  it('gives the same values and verdicts as the run on the firmware', () => {
    const [outcome] = replayCell(check, { check: check.id, seed, faults: {} }, template, asDeclared);
    expect(outcome.verdict).toBe(template.record.verdict);
    for (const finding of template.record.findings) {
      const again = outcome.results.find(({ id }) => id === finding.id);
      if (finding.measured) expect(Math.abs((again?.value ?? 0) / finding.value - 1)).toBeLessThan(1e-4);
    }
  });
  it('finds another car of another seed, and a fault in it', () => {
    const both = { solved: true, calibrated: true };
    const [healthy, calibrated] = replayCell(
      check,
      { check: check.id, seed: 11, faults: {} },
      template,
      both,
    );
    const faults = { 'weak-rotor': 1 };
    const [weak] = replayCell(check, { check: check.id, seed: 11, faults }, template, asDeclared);
    expect([healthy.verdict, calibrated.verdict, weak.verdict]).toEqual(['pass', 'pass', 'fail']);
    expect(healthy.results.map(widthOf).every((w, k) => w > 1.1 * widthOf(calibrated.results[k]))).toBe(true);
  });
  it('refuses a log and a stream that are not of one run', () => {
    const [{ block }] = template.run.blocks;
    const other = { ...block, samples: Array.from(block.samples, (sum) => sum + 1) };
    expect(() => templateOf(template.run.log, [other])).toThrow(RangeError);
  });
});
