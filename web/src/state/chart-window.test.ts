// SPDX-License-Identifier: MIT
// What pan, zoom and pinch do to the shown part of a run, by hand and as properties of any window.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  closestS,
  followed,
  inside,
  panned,
  pinched,
  secondAt,
  spanOf,
  zoomed,
  type ChartRange,
} from './chart-window.ts';

const run: ChartRange = { fromS: 0, toS: 40 };
const window = fc
  .tuple(fc.double({ min: 0, max: 39, noNaN: true }), fc.double({ min: closestS, max: 40, noNaN: true }))
  .map(([fromS, span]) => inside({ fromS, toS: fromS + span }, run));
const share = fc.double({ min: 0, max: 1, noNaN: true });
const withinRun = ({ fromS, toS }: ChartRange) => fromS >= 0 && toS <= 40 + 1e-9 && toS > fromS;

describe('the shown part of a run', () => {
  it('moves by a pan and stops at the ends', () => {
    expect(panned({ fromS: 10, toS: 20 }, 5, run)).toEqual({ fromS: 15, toS: 25 });
    expect(panned({ fromS: 10, toS: 20 }, -50, run)).toEqual({ fromS: 0, toS: 10 });
    expect(panned({ fromS: 10, toS: 20 }, 50, run)).toEqual({ fromS: 30, toS: 40 });
  });
  it('halves about the second that is pointed at', () =>
    expect(zoomed({ fromS: 10, toS: 20 }, 0.5, 0.25, run)).toEqual({ fromS: 11.25, toS: 16.25 }));
  it('gets no closer than two rows and no wider than the run', () => {
    expect(spanOf(zoomed({ fromS: 10, toS: 10.003 }, 0.01, 0.5, run))).toBeCloseTo(closestS, 12);
    expect(zoomed({ fromS: 10, toS: 20 }, 100, 0.5, run)).toEqual(run);
  });
  it('keeps both seconds under two fingers that spread from a half to the whole width', () => {
    expect(pinched(run, [0.25, 0.75], [0, 1], run)).toEqual({ fromS: 10, toS: 30 });
  });
  it.each([
    ['met', [0.2, 0.8], [0.5, 0.501]],
    ['crossed', [0.2, 0.8], [0.8, 0.2]],
  ] as const)('stays as it is while two fingers have %s', (_how, before, now) =>
    expect(pinched(run, before, now, run)).toEqual(run),
  );
  it('follows the newest value only once it nears the right edge', () => {
    expect(followed({ fromS: 0, toS: 10 }, 8)).toEqual({ fromS: 0, toS: 10 });
    expect(followed({ fromS: 0, toS: 10 }, 12)).toEqual({ fromS: 3, toS: 13 });
  });
  it('never leaves the run, whatever is done', () =>
    fc.assert(
      fc.property(window, share, share, fc.double({ min: -99, max: 99, noNaN: true }), (shown, a, b, by) => {
        expect(withinRun(panned(shown, by, run))).toBe(true);
        expect(withinRun(zoomed(shown, Math.exp(by / 20), a, run))).toBe(true);
        expect(withinRun(pinched(shown, [a, b], [b, Math.sqrt(a)], run))).toBe(true);
      }),
    ));
  it('keeps the second under a zooming pointer where the ends leave room', () =>
    fc.assert(
      fc.property(window, share, (shown, at) => {
        const closer = zoomed(shown, 0.5, at, run);
        if (spanOf(shown) > 2 * closestS) expect(secondAt(closer, at)).toBeCloseTo(secondAt(shown, at), 9);
      }),
    ));
});
