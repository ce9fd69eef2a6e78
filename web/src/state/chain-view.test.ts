// SPDX-License-Identifier: MIT
// Tags go by the place a check names and by the part's name: what is shown where, and what follows a part that moves.
import { describe, expect, it } from 'vitest';
import { checks as everyCheck } from '#checks/index';
import type { PartKind } from '#core/parts/part';
import { chainPlaces, placeById, placeOf } from './chain-places.ts';
import { carSentence, standing, tagViews, type ChainFacts } from './chain-view.ts';
import { keptSummary } from './kept-run-fixture.ts';
import { marmot } from './shelf.svelte.ts';
import type { RunSummary } from './run-summary.ts';

const check = (id: string, part: PartKind, place?: string) => ({ id, part, place });
const checks = [
  check('rail-sag', 'controller', 'rail'),
  check('throttle-range', 'controller'),
  check('sensor-cable', 'motor', 'harness'),
  check('motor-no-load', 'motor'),
  check('gear-mesh', 'drive', 'mesh'),
];
const nowMs = Date.parse('2026-11-20T18:00:00Z');
const ran = (checkId: string, over: Partial<RunSummary> & { verdict?: 'pass' | 'fail' } = {}): RunSummary => {
  const { verdict = 'pass', ...rest } = over;
  return { ...keptSummary({ day: 20, verdict }), id: `${checkId} ${JSON.stringify(over)}`, checkId, ...rest };
};
const facts = (...runs: RunSummary[]): ChainFacts => ({ runs, checks, car: marmot, nowMs });
const at = (id: string, given: ChainFacts) => standing(placeById(id)!, given);

describe('a tag', () => {
  it('says "No check for it yet" only where there is none, and nothing of the kind before the checks are known', () => {
    expect(at('phases', facts()).detail).toBe('No check for it yet');
    for (const id of ['rail', 'controller', 'harness', 'motor'])
      expect(at(id, facts()).detail).toBe('Not checked yet');
    expect(at('phases', { ...facts(), checks: [] }).detail).toBe('Not checked yet');
  });
  it('speaks for the place a check names, not for its part', () => {
    const given = facts(ran('sensor-cable', { verdict: 'fail' }), ran('motor-no-load'));
    expect(at('harness', given).verdict).toBe('fail');
    expect(at('motor', given).verdict).toBe('pass');
  });
  it('shows the newest run of each check, and one still running never hides it', () => {
    const older = ran('motor-no-load', { verdict: 'fail', startedAt: '2026-11-19T18:00:00Z' });
    expect(at('motor', facts(older)).verdict).toBe('fail');
    expect(at('motor', facts(older, ran('motor-no-load'))).verdict).toBe('pass');
    const begun = ran('motor-no-load', {
      endedAt: undefined,
      results: [],
      startedAt: '2026-11-20T17:59:00Z',
    });
    expect(at('motor', facts(begun, older)).verdict).toBe('fail');
  });
  it('follows a part into another car, and leaves with it', () => {
    const elsewhere = ran('motor-no-load', { car: 'Vole' });
    expect(at('motor', facts(elsewhere)).verdict).toBe('pass');
    const moved = { ...marmot, motor: { ...marmot.motor, name: 'spare' } };
    expect(at('motor', { ...facts(elsewhere), car: moved }).age).toBe('never');
  });
  it('takes nothing from the virtual car of another seed', () => {
    const drawn = (car: string) => ran('motor-no-load', { car, rigSerial: 'virtual 3' });
    expect(at('motor', facts(drawn('Seed 3'))).age).toBe('never');
    expect(at('motor', facts(drawn(marmot.name))).verdict).toBe('pass');
  });
});
describe('the chain', () => {
  const shown = (given: ChainFacts) => tagViews(given, null).map(({ id }) => id);
  it('leaves out parts the car does not have, unless their checks were run', () => {
    const missing = chainPlaces.map(({ id }) => id).filter((id) => !shown(facts()).includes(id));
    expect(missing).toEqual(['mesh']);
    const named = ran('gear-mesh', { partName: 'drive train of Marmot' });
    expect(shown(facts(named))).toContain('mesh');
    const bare = { ...marmot, motor: { ...marmot.motor, sensored: false } };
    expect(shown({ ...facts(), car: bare })).not.toContain('harness');
  });
  it('marks the place that is being checked, not all of its part', () => {
    const running = tagViews(facts(), 'harness').filter((tag) => tag.running);
    expect(running.map(({ id }) => id)).toEqual(['harness']);
  });
  it('counts in its sentence only places that a check speaks for', () => {
    const sentence = (given: ChainFacts) => carSentence(tagViews(given, null), 'Marmot', 'the race');
    expect(sentence(facts())).toBe('Marmot has not been measured yet');
    const all = checks
      .slice(0, 4)
      .map(({ id, part }) => ran(id, { part, partName: marmot[part as 'motor'].name }));
    expect(sentence(facts(...all))).toBe('Marmot passes what was checked for the race');
    expect(sentence(facts(...all.slice(1)))).toBe('Not settled for the race: receiver rail open');
    expect(sentence(facts(ran('sensor-cable', { verdict: 'fail' })))).toMatch(
      /^Not ready.*: sensor cable fails$/,
    );
  });
});
it('every check names a place that there is', () => {
  const strangers = everyCheck.filter(({ place }) => place !== undefined && !placeById(place));
  expect(strangers.map(({ id }) => id)).toEqual([]);
  expect(new Set(everyCheck.map((each) => placeOf(each).id)).size).toBeGreaterThan(9);
});
