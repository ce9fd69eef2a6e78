// SPDX-License-Identifier: MIT
// Sentences of evidence, with made-up usual ranges: what was seen, then what is usual, each unit once.
import { describe, expect, it } from 'vitest';
import { evidenceWords } from './evidence-words.ts';
import { features, type FeatureId } from './features.ts';

const feature = (id: FeatureId) => features.find((one) => one.id === id)!;
const told = (id: FeatureId, value: number, middle: number, spread: number): string =>
  evidenceWords(feature(id), value, { middle, spread });

describe('a sentence of evidence', () => {
  it('says a current, its usual middle and range', () =>
    expect(told('rest-current', Math.log(0.178), Math.log(0.012), Math.log(2) / 2)).toBe(
      'It draws 0.18 A at rest, its horn free; usual is 0.012 A (0.006 to 0.024 A).',
    ));
  it('says no figure below what the tap can tell, and no range that begins there', () =>
    expect(told('hunting-current', Math.log(0.003), Math.log(0.003), Math.log(2) / 2)).toBe(
      'Its current at rest swings by less than 0.003 A (r.m.s.); usual is up to 0.006 A.',
    ));
  it('says what a share is a share of once', () =>
    expect(told('stall-current', Math.log(0.76), 0, 0.05)).toBe(
      'Stalled, it draws 76 % of the current on its label; usual is 100 % (90 to 111 %).',
    ));
  it('says words that are no figure once', () => {
    expect(told('stop-met', 1, 1, 0.15)).toBe('The steering came to a stop on both sides, as usual.');
    expect(told('stop-met', 0, 1, 0.15)).toBe(
      'The steering came to no stop on one side at least; usual is a stop on both sides.',
    );
  });
});
