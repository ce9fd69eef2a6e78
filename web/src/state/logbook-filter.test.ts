// SPDX-License-Identifier: MIT
// Each field of the filter by itself, and together.
import { describe, expect, it } from 'vitest';
import { keptSummary } from './kept-run-fixture.ts';
import { choices, dayOf, filtered, filters, noFilter } from './logbook-filter.ts';
import { marmot } from './shelf.svelte.ts';

const runs = [
  { ...keptSummary({ id: 'a', day: 1 }), note: 'New bearings, cold track' },
  keptSummary({ id: 'b', day: 2, verdict: 'fail' }),
  { ...keptSummary({ id: 'c', day: 3, car: { ...marmot, name: 'Wombat' } }), part: 'servo' as const },
];
const ids = (filter: Partial<typeof noFilter>) =>
  filtered(runs, { ...noFilter, ...filter }).map(({ id }) => id);

describe('the filter of the logbook', () => {
  it.each([
    ['nothing set', {}, ['a', 'b', 'c']],
    ['a part', { part: 'servo' as const }, ['c']],
    ['a check', { check: 'servo-idle' }, []],
    ['a verdict', { verdict: 'fail' as const }, ['b']],
    ['a car', { car: 'Wombat' }, ['c']],
    ['a first day', { from: dayOf(runs[1].startedAt) }, ['b', 'c']],
    ['a last day', { to: dayOf(runs[1].startedAt) }, ['a', 'b']],
    ['words of a note in any order', { words: 'TRACK bearings' }, ['a']],
    ['a word that stands nowhere', { words: 'bearings warm' }, []],
    ['two fields', { verdict: 'pass' as const, car: marmot.name }, ['a']],
  ])('with %s', (_what, filter, expected) => expect(ids(filter)).toEqual(expected));
  it('knows whether anything is set', () => {
    expect(filters(noFilter)).toBe(false);
    expect(filters({ ...noFilter, words: 'x' })).toBe(true);
  });
  it('offers each car once', () =>
    expect(choices(runs, ({ car }) => ({ value: car, title: car })).map(({ value }) => value)).toEqual([
      'Marmot',
      'Wombat',
    ]));
});
