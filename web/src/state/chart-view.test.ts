// SPDX-License-Identifier: MIT
// What a person sees of a run that goes on and of one that is kept, step by step; hands and keys lead to the same view.
import { describe, expect, it } from 'vitest';
import { ChartHands, wheelFactor } from './chart-hands.ts';
import { chartAct, edgeStep } from './chart-keys.ts';
import { ChartView } from './chart-view.svelte.ts';

function kept(latestS = 40) {
  return new ChartView(() => ({ latestS, running: false, spanS: 0 }));
}
/** A run of 40 s whose newest value is where `at` says. */
function live(at: { latestS: number }) {
  return new ChartView(() => ({ latestS: at.latestS, running: true, spanS: 40 }));
}
const press = (view: ChartView, ...keys: [key: string, shift?: boolean][]) => {
  for (const [key, shift = false] of keys) view.act(chartAct(key, shift, view.brush !== null)!);
};

describe('the view of a kept run', () => {
  it('is whole at first, closer after a zoom, whole again by 0', () => {
    const view = kept();
    expect(view.range).toEqual({ fromS: 0, toS: 40 });
    press(view, ['+'], ['+']);
    expect(view.range).toEqual({ fromS: expect.closeTo(10, 9), toS: expect.closeTo(30, 9) });
    press(view, ['ArrowLeft']);
    expect(view.range).toEqual({ fromS: expect.closeTo(8, 9), toS: expect.closeTo(28, 9) });
    press(view, ['Home']);
    expect(view.range.fromS).toBe(0);
    press(view, ['End']);
    expect(view.range.toS).toBe(40);
    press(view, ['0']);
    expect(view.whole).toBe(true);
  });
  it('is whole again once a zoom has come back to all', () => {
    const view = kept();
    press(view, ['+'], ['-'], ['-']);
    expect(view.whole).toBe(true);
  });
  it('brushes by keys: B begins, arrows move it, Shift widens, Escape clears', () => {
    const view = kept(30);
    press(view, ['b']);
    expect(view.brush).toEqual({ fromS: 10, toS: 20 });
    press(view, ['ArrowRight'], ['ArrowRight', true]);
    expect(view.brush!.fromS).toBeCloseTo(10.075, 9);
    expect(view.brush!.toS).toBeCloseTo(20.225, 9);
    expect(view.whole).toBe(true);
    press(view, ['Escape']);
    expect(view.brush).toBeNull();
    expect(chartAct('Escape', false, false)).toBeNull();
  });
  it('moves one edge by its own keys and lets the picture come along', () => {
    const view = kept();
    view.show({ fromS: 10, toS: 20 });
    view.brushFromTo(12, 19.99);
    view.stepEdge('to', edgeStep('ArrowRight', true)!);
    expect(view.brush!.toS).toBeCloseTo(20.49, 9);
    expect(view.range).toEqual({ fromS: expect.closeTo(15.49, 9), toS: expect.closeTo(25.49, 9) });
    view.stepEdge('from', edgeStep('Home', false)!);
    expect(view.brush!.fromS).toBeCloseTo(15.49, 9);
  });
  it('has nothing to hold', () => {
    const view = kept();
    press(view, ['h']);
    expect(view.held).toBe(false);
  });
});
describe('the view of a run that goes on', () => {
  it('stays where the person looks back, and follows where the newest value is in sight', () => {
    const at = { latestS: 20 };
    const view = live(at);
    view.show({ fromS: 2, toS: 12 });
    at.latestS = 30;
    expect(view.range).toEqual({ fromS: 2, toS: 12 });
    view.show({ fromS: 25, toS: 35 });
    at.latestS = 36;
    expect(view.range).toEqual({ fromS: 27, toS: 37 });
  });
  it('held, draws no further; going on, it is where live is, as close as before', () => {
    const at = { latestS: 20 };
    const view = live(at);
    view.show({ fromS: 15, toS: 25 });
    view.hold();
    at.latestS = 34;
    expect([view.nowS, view.range]).toEqual([20, { fromS: 15, toS: 25 }]);
    view.startBrush();
    expect(view.brush!.toS).toBeLessThanOrEqual(20);
    view.goOn();
    expect(view.nowS).toBe(34);
    expect(view.range.toS - view.range.fromS).toBeCloseTo(10, 9);
    expect(view.range.fromS < 34 && view.range.toS > 34).toBe(true);
  });
});
describe('hands on a chart', () => {
  it('drag the picture with one finger', () => {
    const view = kept();
    view.show({ fromS: 10, toS: 20 });
    const hands = new ChartHands(view);
    hands.down(1, 0.5);
    hands.move(1, 0.7);
    hands.up(1);
    expect(view.range).toEqual({ fromS: expect.closeTo(8, 9), toS: expect.closeTo(18, 9) });
  });
  it('spread two fingers to look closer, and drag on with the one left', () => {
    const view = kept();
    const hands = new ChartHands(view);
    hands.down(1, 0.4);
    hands.down(2, 0.6);
    hands.move(1, 0.3);
    hands.move(2, 0.7);
    expect(view.range).toEqual({ fromS: expect.closeTo(10, 9), toS: expect.closeTo(30, 9) });
    hands.up(2);
    hands.move(1, 0.4);
    expect(view.range).toEqual({ fromS: expect.closeTo(8, 9), toS: expect.closeTo(28, 9) });
  });
  it('brush while measuring is on, and put the nearer edge where they tap', () => {
    const view = kept();
    view.startBrush();
    const hands = new ChartHands(view);
    hands.down(1, 0.8);
    hands.move(1, 0.5);
    hands.up(1);
    expect(view.brush).toEqual({ fromS: 20, toS: 32 });
    hands.down(1, 0.9);
    hands.up(1);
    expect(view.brush).toEqual({ fromS: 20, toS: 36 });
    expect(view.whole).toBe(true);
  });
  it('pinch while measuring is on, and leave the brush as it is', () => {
    const view = kept();
    view.brushFromTo(18, 22);
    const hands = new ChartHands(view);
    hands.down(1, 0.4);
    hands.down(2, 0.6);
    hands.move(2, 0.8);
    hands.up(2);
    hands.move(1, 0.1);
    expect(view.brush).toEqual({ fromS: 18, toS: 22 });
    expect(view.whole).toBe(false);
  });
  it('that the browser takes away mean nothing more', () => {
    const view = kept();
    const hands = new ChartHands(view);
    hands.down(1, 0.4);
    hands.cancel();
    hands.move(1, 0.9);
    expect(view.whole).toBe(true);
  });
  it.each([
    [100, 0, Math.exp(0.3)],
    [3, 1, Math.exp(0.144)],
    [-1, 2, Math.exp(-0.72)],
  ])('turn a wheel by %d in mode %d', (delta, mode, factor) =>
    expect(wheelFactor(delta, mode)).toBeCloseTo(factor, 9),
  );
});
describe('the view of runs that begin before the rig went live', () => {
  const since = () => new ChartView(() => ({ earliestS: -2, latestS: 8, running: false, spanS: 0 }));
  it('goes from the first second of any to the last', () => {
    expect(since().range).toEqual({ fromS: -2, toS: 8 });
    expect(since().recorded.fromS).toBe(-2);
  });
  it('comes back to its beginning by Home, and brushes there', () => {
    const view = since();
    press(view, ['+'], ['End'], ['Home']);
    expect(view.range.fromS).toBeCloseTo(-2, 9);
    view.brushFromTo(-3, -1);
    expect(view.brush).toEqual({ fromS: -2, toS: -1 });
  });
});
