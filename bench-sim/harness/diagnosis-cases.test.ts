// SPDX-License-Identifier: MIT
// The kept servos of known cause are those that the bench simulates: rows made again, figure by figure.
import { describe, expect, it } from 'vitest';
import { casesFile, casesIn } from '#core/diagnosis/cases';
import heldOut from '../../web/src/core/diagnosis/fixtures/held-out.json' with { type: 'json' };
import { diagnosisCase } from './diagnosis-cases.ts';

const rowOf = (seed: number) => heldOut.cases.find(([of]) => of === seed)!;

describe('the kept servos', () => {
  it('are refused in another form', () => {
    expect(() => casesIn({ ...heldOut, columns: [] })).toThrow(/columns/);
    expect(() => casesIn({ ...heldOut, cases: [[1, 'gremlins', 0, []]] })).toThrow(/cause|cases/);
  });
  it.each(['hunting', 'slipping-horn'] as const)(
    'of %s are simulated again to the same figures',
    async (cause) => {
      const [seed] = heldOut.cases.find(([, of]) => of === cause) as [number];
      const again = casesFile([await diagnosisCase(cause, seed)], { date: '', command: '' });
      expect(again.cases[0]).toEqual(rowOf(seed));
    },
  );
});
