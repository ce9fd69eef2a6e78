// SPDX-License-Identifier: MIT
// Cues: silent unless chosen, which notes a verdict and a trip are. Notes are told by their musical step in equal
// temperament (a fifth is 7 of 12 half tones, a fourth 5: from memory, no source), not by the table they are made from.
import { describe, expect, it } from 'vitest';
import type { Note } from '../adapters/tones.ts';
import { Cues } from './cues.svelte.ts';

function listening(kept: Record<string, string> = {}) {
  const memory = new Map(Object.entries(kept));
  const played: { notes: readonly Note[]; level: number }[] = [];
  const shaken: (readonly number[])[] = [];
  const sounder = {
    play: (notes: readonly Note[], level: number) => void played.push({ notes, level }),
    vibrate: (pattern: readonly number[]) => void shaken.push(pattern),
  };
  const cues = new Cues(sounder, {
    getItem: (key) => memory.get(key) ?? null,
    setItem: (key, value) => void memory.set(key, value),
  });
  return { cues, memory, played, shaken };
}
const phase = (name: 'safe' | 'live' | 'tripped' | 'lost') =>
  ({ kind: 'phase', phase: name, words: '' }) as const;
const done = (verdict: 'pass' | 'fail' | 'undecided' | 'not measured') =>
  ({ verdict, ending: 'done' }) as const;
const halfTones = ([a, b]: readonly Note[]) => Math.round(12 * Math.log2(b.hz / a.hz));

describe('cues', () => {
  it('are silent unless chosen', () => {
    const { cues, played, shaken } = listening();
    cues.ended(done('fail'));
    cues.hear(phase('tripped'));
    expect([played, shaken]).toEqual([[], []]);
  });
  it.each([
    ['pass', 7],
    ['fail', -5],
    ['undecided', 0],
  ] as const)('%s moves by %i half tones', (verdict, step) => {
    const { cues, played } = listening({ sound: 'on' });
    cues.ended(done(verdict));
    expect(halfTones(played[0].notes)).toBe(step);
  });
  it('are over within half a second', () => {
    const { cues, played } = listening({ sound: 'on' });
    for (const verdict of ['pass', 'fail', 'undecided', 'not measured'] as const) cues.ended(done(verdict));
    cues.hear(phase('tripped'));
    for (const { notes } of played)
      expect(Math.max(...notes.map(({ atS, lengthS }) => atS + lengthS))).toBeLessThanOrEqual(0.5);
  });
  it('tell a trip once, and not again as a verdict', () => {
    const { cues, played, shaken } = listening({ sound: 'on', vibration: 'on' });
    cues.hear(phase('live'));
    cues.hear(phase('tripped'));
    cues.hear(phase('tripped'));
    cues.ended({ verdict: 'not measured', ending: 'tripped' });
    expect([played.length, shaken.length]).toEqual([1, 1]);
    expect(played[0].notes.map(({ hz }) => hz)).toEqual([220, 220, 220]);
  });
  it('keep the choice and the level', () => {
    const { cues, memory } = listening();
    cues.chooseSound(true);
    cues.chooseLevel(0.3);
    expect(listening(Object.fromEntries(memory)).cues).toMatchObject({
      sound: true,
      vibration: false,
      level: 0.3,
    });
  });
});
