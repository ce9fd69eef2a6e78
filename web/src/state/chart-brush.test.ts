// SPDX-License-Identifier: MIT
// What the edges of a brush do, worked out by hand.
import { describe, expect, it } from 'vitest';
import {
  brushBetween,
  brushPanned,
  brushWidened,
  edgeMoved,
  firstBrush,
  nearestEdge,
} from './chart-brush.ts';

const recorded = { fromS: 0, toS: 10 };
const brush = { fromS: 4, toS: 6 };

describe('a brush', () => {
  it('begins as the middle third of what is recorded of the shown part', () => {
    expect(firstBrush({ fromS: 0, toS: 9 }, recorded)).toEqual({ fromS: 3, toS: 6 });
    expect(firstBrush({ fromS: 4, toS: 40 }, recorded)).toEqual({ fromS: 6, toS: 8 });
  });
  it('does not begin where nothing is recorded yet', () =>
    expect(firstBrush({ fromS: 12, toS: 20 }, recorded)).toBeNull());
  it('takes its two seconds in either order and stays inside of the record', () => {
    expect(brushBetween(7, 3, recorded)).toEqual({ fromS: 3, toS: 7 });
    expect(brushBetween(-2, 99, recorded)).toEqual(recorded);
  });
  it('keeps its edges in order', () => {
    expect(edgeMoved(brush, 'from', 9, recorded)).toEqual({ fromS: 5.998, toS: 6 });
    expect(edgeMoved(brush, 'to', 1, recorded)).toEqual({ fromS: 4, toS: 4.002 });
    expect(edgeMoved(brush, 'to', 99, recorded)).toEqual({ fromS: 4, toS: 10 });
  });
  it('gives the edge that is nearer', () => {
    expect(nearestEdge(brush, 4.9)).toBe('from');
    expect(nearestEdge(brush, 5.1)).toBe('to');
  });
  it('moves whole and stops at the ends', () => {
    expect(brushPanned(brush, 1, recorded)).toEqual({ fromS: 5, toS: 7 });
    expect(brushPanned(brush, 99, recorded)).toEqual({ fromS: 8, toS: 10 });
  });
  it('widens about its middle, and narrows to no less than two rows', () => {
    expect(brushWidened(brush, 2, recorded)).toEqual({ fromS: 3, toS: 7 });
    const least = brushWidened(brush, -99, recorded);
    expect(least.toS - least.fromS).toBeCloseTo(0.002, 12);
  });
});
