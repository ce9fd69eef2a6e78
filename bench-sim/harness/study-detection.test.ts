// SPDX-License-Identifier: MIT
import { describe, expect, it } from 'vitest';
import { detectionOf } from './study-detection.ts';
import type { CellOutcome } from './study-run.ts';

const run = (
  faults: CellOutcome['faults'],
  verdict: string,
  more: Partial<CellOutcome> = {},
): CellOutcome => ({
  check: 'rail-sag',
  seed: 1,
  faults,
  calibrated: false,
  verdict,
  ending: 'done',
  reason: '',
  results: [],
  rigS: 20,
  wallS: 5,
  ...more,
});
const soft = (severity: number, ...verdicts: string[]) =>
  verdicts.map((verdict) => run({ 'soft-rail': severity }, verdict));

describe('which faults are found', () => {
  it('counts by severity, and says from which on half of the runs find it', () => {
    const { rows, missed } = detectionOf([
      ...soft(1, 'fail', 'fail', 'undecided', 'fail'),
      ...soft(0.25, 'pass', 'pass', 'pass', 'fail'),
      ...soft(0.5, 'fail', 'pass', 'undecided', 'fail'),
    ]);
    expect(rows).toEqual([
      {
        check: 'rail-sag',
        fault: 'soft-rail',
        expected: 'fail',
        severities: [
          { severity: 0.25, found: 1, of: 4 },
          { severity: 0.5, found: 2, of: 4 },
          { severity: 1, found: 3, of: 4 },
        ],
        firstHalf: 0.5,
      },
    ]);
    expect(missed).toMatchObject({ inside: 1, of: 4 });
  });
  it('gives no severity where the greatest is missed by most, whatever lesser ones say', () =>
    expect(detectionOf([...soft(0.5, 'fail'), ...soft(1, 'pass')]).rows[0].firstHalf).toBe(null));
  it('takes a trip for what it is', () => {
    const open = (ending: string) => run({ 'stop-line-open': 1 }, 'not measured', { ending });
    expect(detectionOf([open('tripped'), open('done')]).rows[0].severities[0]).toMatchObject({ found: 1 });
  });
  it('takes for an alarm a sound car that fails or trips, at severity 0 and with what is no fault, not an open verdict', () => {
    const { falseAlarms } = detectionOf([
      run({}, 'pass'),
      run({}, 'undecided'),
      run({ 'soft-rail': 0 }, 'fail'),
      run({ 'hot-motor': 1 }, 'fail'),
      run({}, 'not measured', { ending: 'tripped' }),
      run({ 'soft-rail': 1 }, 'fail'),
    ]);
    expect(falseAlarms).toMatchObject({ inside: 3, of: 5 });
  });
});
