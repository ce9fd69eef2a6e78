// SPDX-License-Identifier: MIT
// Runs side by side: figures as people read them and words that say what a difference is worth. Budgets of the
// fixture: gain 0.02 (falls out on one rig), noise 0.01 with 12 degrees of freedom, so u = 0.01 * sqrt 2 and, by
// Welch-Satterthwaite, 24 of them: t = 2.064 (tables), half = 0.029.
import { describe, expect, it } from 'vitest';
import { comparedResults } from './compared-results.ts';
import { keptSummary } from './kept-run-fixture.ts';

const [a, b] = [keptSummary({ id: 'a' }), keptSummary({ id: 'b', day: 2, value: 3.2 })];

describe('two runs of one check', () => {
  it('differ by B less A with the uncertainty that they do not share', () => {
    const [line] = comparedResults([a, b], [a, b]);
    expect(line.differences[0].figure).toBe('+0.200\u00a0±\u00a00.029\u00a0A');
    expect(line.differences[0].words).toMatch(
      /larger than uncertainty: it is a real difference.*not known yet.*gain of pack current/,
    );
  });
  it('on two rigs keep both gains: 2.0 times hypot(0.02, 0.02, 0.014)', () => {
    const other = keptSummary({ id: 'c', value: 3.05, serial: '18' });
    expect(comparedResults([a, other], [a, other])[0].differences[0]).toMatchObject({
      figure: '+0.05\u00a0±\u00a00.06\u00a0A',
      words: expect.stringMatching(/no difference is seen/),
    });
  });
  it('that are no more apart than the part’s runs scatter show no difference', () => {
    const history = [3, 3.2, 3, 3.2, 3, 3.2].map((value, i) =>
      keptSummary({ id: `h${i}`, day: i + 1, value }),
    );
    const [line] = comparedResults([history[0], history[1]], history);
    expect(line.differences[0].words).toMatch(
      /within uncertainty and scatter: no difference is seen.*scatter is counted/,
    );
  });
  it('of which one was not measured have no difference', () => {
    const none = { ...b, results: [{ ...b.results[0], value: undefined, reason: 'A gap' }] };
    expect(comparedResults([a, none], [a])[0].differences[0].figure).toBe('none');
  });
});
