// SPDX-License-Identifier: MIT
// Which mark to take, worked by hand: 10 % of speed for 20 % of current is worth it, 1 % for 20 % is not. And what a sweep
// refuses before anything is computed.
import { describe, expect, it } from 'vitest';
import { exact } from '#core/measurements/quantity';
import { testRig } from '#core/samples/scan-block-fixture';
import { ScanColumns } from '#core/samples/scan-columns';
import { marmot } from '../synthetic-run-fixture.ts';
import { analyse, results } from './analysis.ts';
import { gainOf, proposed, tradeWords, type MarkFigures } from './trade.ts';

const mark = (degrees: number, kv: number, amps: number): MarkFigures => ({
  degrees,
  kv: exact(kv),
  currentA: exact(amps),
  canC: 30,
});
const worth = [mark(20, 2000, 2), mark(30, 2200, 2.4)];

describe('the mark to take', () => {
  it('is the last where every step is worth its current', () => expect(proposed(worth).degrees).toBe(30));
  it('is the one before the first step that is not', () => {
    const flat = [...worth, mark(40, 2222, 2.88), mark(50, 2600, 2.9)];
    expect(gainOf(flat[1], flat[2])).toBeCloseTo(0.05, 9);
    expect(proposed(flat).degrees).toBe(30);
  });
  it('counts speed that costs nothing as worth it', () =>
    expect(gainOf(mark(20, 2000, 2), mark(30, 2100, 1.9))).toBe(Number.POSITIVE_INFINITY));
  it('shows what was traded', () =>
    expect(tradeWords(worth)).toEqual([
      '20 degrees: 2000 rpm/V, 2.00 A, can 30 °C',
      '30 degrees: 2200 rpm/V, 2.40 A, can 30 °C; from 20 degrees 10.0 % speed for 20.0 % current',
    ]));
});
describe('timing-sweep refuses', () => {
  const rig = testRig();
  const idle = { fromS: 1, toS: 2 };
  const reasons = (turned: boolean) =>
    analyse({
      evidence: { marks: turned ? [] : [{ turned, failSafeS: null, degrees: 20, idle, steps: [] }] },
      samples: new ScanColumns(rig),
      rig,
      car: marmot,
    }).map((finding) => (finding.measured ? 'measured' : finding.reason));
  it('a motor that never turned, for every result', () =>
    expect(reasons(false)).toEqual(results.map(() => expect.stringMatching(/sensor cable/))));
  it('a sweep without three marks and the first again', () =>
    expect(reasons(true)[0]).toMatch(/at least 3 are needed/));
});
