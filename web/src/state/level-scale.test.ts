// SPDX-License-Identifier: MIT
// How far an axis goes for the lines on it, and where their words stand; worked out by hand.
import { describe, expect, it } from 'vitest';
import type { LevelLines } from './chart-levels.ts';
import { amountScale, placedBaselines } from './level-scale.ts';

const line = (value: number | null, ...limits: number[]): LevelLines => ({
  id: 'x',
  title: 'x',
  colour: '--pass',
  value: value === null ? null : { at: value, interval: [value, value], words: '' },
  limits: limits.map((at) => ({ at, bad: 'below', words: '' })),
  stretches: [],
});
/** Trace from 7 to 8: 0.1 below, 0.4 above. */
describe('the axis of amounts', () => {
  it('is the trace with head room where no line is drawn', () =>
    expect(amountScale(7, 8, [], 6)).toEqual([expect.closeTo(6.9, 9), expect.closeTo(8.4, 9)]));
  it('goes to a limit that lies near: 4.5 makes 3.5 of 1', () =>
    expect(amountScale(7, 8, [line(7.5, 4.5)], 6)).toEqual([
      expect.closeTo(4.5 - 0.35, 9),
      expect.closeTo(8 + 1.4, 9),
    ]));
  it('does not go to a limit that would make the trace flat, but still to a nearer one', () =>
    expect(amountScale(7, 8, [line(null, 0, 6)], 6)).toEqual([
      expect.closeTo(5.8, 9),
      expect.closeTo(8.8, 9),
    ]));
  it('holds a trace that never changes', () => {
    const [low, high] = amountScale(7, 7, [], 6);
    expect(low).toBeLessThan(7);
    expect(high).toBeGreaterThan(7);
  });
  it('is some axis where nothing was recorded', () =>
    expect(amountScale(null, null, [line(7)], 6)).toEqual([0, 1]));
});
const placed = (ys: number[], bottom: number, top = 0, needed = true) =>
  placedBaselines(
    ys.map((y) => ({ y, top, needed })),
    bottom,
  );
describe('words at the ends of lines', () => {
  it('stand above their line, and below where another stands there', () =>
    expect(placed([50, 50], 100)).toEqual([45, 64]));
  it('stand no row away from a line that is not the one looked at', () =>
    expect(placed([50, 50, 50], 100, 0, false)).toEqual([45, 64, null]));
  it('leave the name of the plot free', () => expect(placed([4], 100, 22)).toEqual([34]));
  it('stay inside', () => {
    expect(placed([4], 100)).toEqual([18]);
    expect(placed([99], 100)).toEqual([94]);
  });
  it('are left out where there is no room, the less important ones', () =>
    expect(placed([20, 20, 20, 20], 40)).toEqual([15, 34, null, null]));
});
