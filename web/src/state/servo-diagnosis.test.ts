// SPDX-License-Identifier: MIT
// The diagnosis card ranks as the core does, links each figure to its run and each next step to a check there is.
import { describe, expect, it } from 'vitest';
import { checks } from '#checks/index';
import { chanceWords, diagnose } from '#core/diagnosis/diagnosis';
import { keptSummary } from './kept-run-fixture.ts';
import { findingOf } from './part-runs.ts';
import type { RunSummary } from './run-summary.ts';
import { servoDiagnosis, sideBits } from './servo-diagnosis.ts';
import { marmot } from './shelf.svelte.ts';

const ran = (
  checkId: string,
  values: Readonly<Record<string, number>>,
  part: 'servo' | 'controller' = 'servo',
): RunSummary => {
  const kept = keptSummary();
  const results = Object.entries(values).map(([id, value]) => ({ ...kept.results[0], id, value }));
  return { ...kept, id: `run of ${checkId}`, checkId, part, partName: marmot[part].name, results };
};
const stiff = ran('servo-no-load', { 'moving-current': 1.4, 'sweep-current': 0.9, 'tight-spot': 1.2 });

describe('the diagnosis card', () => {
  it('is not there before a run of the servo, nor for one of another servo', () => {
    expect(servoDiagnosis([], checks, marmot)).toBeNull();
    expect(
      servoDiagnosis([ran('rail-setting', { 'rail-setting': 6 }, 'controller')], checks, marmot),
    ).toBeNull();
    const other = { ...marmot, servo: { ...marmot.servo, name: 'spare' } };
    expect(servoDiagnosis([stiff], checks, other)).toBeNull();
  });
  it('ranks as the core does from the same figures', () => {
    const view = servoDiagnosis([stiff], checks, marmot)!;
    const core = diagnose([{ check: 'servo-no-load', findings: stiff.results.map(findingOf) }], marmot);
    const toldByCore = core.ranked.filter(({ likely }) => likely !== 'ruled out');
    expect(view.told.map(({ id, chance }) => [id, chance])).toEqual(
      toldByCore.map(({ cause, probability }) => [cause.id, chanceWords(probability)]),
    );
    expect(view.told[0].id).toBe('stiff-gear-train');
    expect(view.ruledOut?.split('; ')).toHaveLength(core.ranked.length - toldByCore.length);
  });
  it('links every piece of evidence to its run and keeps the beam in its bounds', () => {
    const { told, mostBits, heard } = servoDiagnosis([stiff], checks, marmot)!;
    expect(heard).toEqual(['servo-no-load']);
    const evidence = told.flatMap((cause) => cause.evidence);
    expect(evidence.length).toBeGreaterThan(1);
    expect(new Set(evidence.map(({ runId }) => runId))).toEqual(new Set([stiff.id]));
    for (const cause of told)
      for (const side of ['for', 'against'] as const)
        expect(sideBits(cause.evidence, side)).toBeLessThanOrEqual(mostBits);
  });
  it('offers as next only a check that this bench has', () => {
    const quiet = ran('servo-idle', { 'centre-current': 0.02 });
    const next = servoDiagnosis([quiet], checks, marmot)!.next!.check;
    expect(next).not.toBe('servo-idle');
    const fewer = checks.filter(({ id }) => id !== next);
    expect(servoDiagnosis([quiet], fewer, marmot)!.next?.check).not.toBe(next);
  });
});
