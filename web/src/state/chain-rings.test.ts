// SPDX-License-Identifier: MIT
// Every place has its ring on the drawing: inside of it, and apart from all others at the largest size they are drawn.
import { describe, expect, it } from 'vitest';
import { chainPlaces } from './chain-places.ts';
import { planBox, ringSpot } from './chain-rings.ts';

const [left, top, width, height] = planBox.split(' ').map(Number);
/** Radius 13 at 1.5 times, with half of the line. */
const reach = 14 * 1.5;

describe.each(chainPlaces)('the ring of $id', ({ id }) => {
  const [x, y] = ringSpot(id);
  it('lies inside of the drawing', () => {
    expect(Math.min(x - left, left + width - x, y - top, top + height - y)).toBeGreaterThan(reach);
  });
  it('touches no other', () => {
    const others = chainPlaces.filter((place) => place.id !== id).map((place) => ringSpot(place.id));
    expect(Math.min(...others.map(([ox, oy]) => Math.hypot(x - ox, y - oy)))).toBeGreaterThan(2 * reach);
  });
});
