// SPDX-License-Identifier: MIT
// Verdicts that a repair or another limit has overtaken count as old.
import { describe, expect, it } from 'vitest';
import type { Car } from '#core/parts/part';
import { placeOfPart } from './chain-places.ts';
import { standing } from './chain-view.ts';
import { keptSummary } from './kept-run-fixture.ts';
import { overtaken } from './overtaken.ts';
import { marmot } from './shelf.svelte.ts';

const run = keptSummary({ day: 10 });
const [result] = run.results;
const own = (max: number): Car => ({
  ...marmot,
  overrides: [
    {
      checkResultId: 'motor-no-load/no-load-current',
      max,
      reason: 'as found on my track',
      date: '2026-11-11',
    },
  ],
});
const repair = (at: string, partName = marmot.motor.name) => [{ partName, at, words: 'new bearings' }];
const why = (car: Car, repairs = repair('2026-11-01'), line = result) =>
  overtaken(run, line, { car, repairs });

describe('a verdict', () => {
  it('stands while nothing was changed', () => expect(why(marmot)).toBeNull());
  it('is overtaken by a repair of its part, not by one of another', () => {
    expect(why(marmot, repair('2026-11-11'))).toBe('before the repair of 2026-11-11');
    expect(why(marmot, repair('2026-11-11', 'another motor'))).toBeNull();
  });
  it('is overtaken by an own limit, by another one, and by none where there was one', () => {
    const mine = { ...result, limit: { ...result.limit!, max: 3.3, kind: 'own override' as const } };
    expect(why(own(3.3))).toMatch(/another one now/);
    expect(why(own(3.3), [], mine)).toBeNull();
    expect(why(own(3.2), [], mine)).toMatch(/another one now/);
    expect(why(marmot, [], mine)).toMatch(/another one now/);
  });
  it('overtaken is old on its tag, however young', () => {
    const nowMs = Date.parse(run.startedAt) + 60_000;
    const checks = [{ id: run.checkId, part: 'motor' as const }];
    const stands = (old: boolean) =>
      standing(placeOfPart('motor'), { runs: [run], checks, car: marmot, nowMs, overtaken: () => old });
    expect(stands(false).old).toBe(false);
    expect(stands(true)).toMatchObject({ old: true, age: '1 min ago, old', verdict: 'pass' });
  });
});
