// SPDX-License-Identifier: MIT
// Checked against a clock whose ratio is known, with delays that are not.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { RigClock } from './rig-clock.ts';
import { TickCount } from './tick-count.ts';

const tickS = 0.5e-6;
/** Beats every 20 ms, read by a rig whose second is `ratio` host seconds long. */
function fitOf(ratio: number, delaysMs: readonly (readonly [number, number])[], startTick = 0) {
  const clock = new RigClock(tickS, 0.005);
  delaysMs.forEach(([there, back], i) => {
    const sentMs = 1000 + i * 20;
    const tick = startTick + ((sentMs + there - 1000) / 1000 / ratio) * 2e6;
    clock.push(Math.round(tick) % 2 ** 32, sentMs, sentMs + there + back);
  });
  return clock.fit;
}
const delay = fc.tuple(
  fc.double({ min: 0.1, max: 30, noNaN: true }),
  fc.double({ min: 0.1, max: 30, noNaN: true }),
);

describe('the fit of rig time', () => {
  it('holds the true ratio inside its bounds whatever the delays were', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.995, max: 1.005, noNaN: true }),
        fc.array(delay, { minLength: 500, maxLength: 800 }),
        (ratio, delays) => {
          const fit = fitOf(ratio, delays);
          expect(Math.abs(fit.ratio - ratio)).toBeLessThanOrEqual(fit.halfWidth);
        },
      ),
      { numRuns: 40 },
    );
  });
  it('is better than 0.03 % after 20 s of beats that took 1 to 3 ms', () => {
    const delays = Array.from({ length: 1000 }, (_, i) => [0.5 + (i % 7) / 7, 0.5 + (i % 5) / 5] as const);
    const fit = fitOf(1.0023, delays);
    expect(fit.origin).toBe('fit');
    expect(fit.halfWidth).toBeLessThan(3e-4);
    expect(fit.ratio).toBeCloseTo(1.0023, 4);
  });
  it('goes through the wrap of the ticks', () => {
    const delays = Array.from({ length: 500 }, () => [1, 1] as const);
    expect(fitOf(0.998, delays, 2 ** 32 - 4e6).ratio).toBeCloseTo(0.998, 3);
  });
  it('says what the descriptor says until it knows better', () => {
    expect(new RigClock(tickS, 0.005).fit).toEqual({ ratio: 1, halfWidth: 0.005, origin: 'descriptor' });
  });
});
describe('the count of ticks', () => {
  it('rises through several turns of 32 bits, with ticks a little out of order', () => {
    const count = new TickCount();
    const step = 2 ** 30;
    for (let i = 0; i < 20; i++) {
      expect(count.unwrap((i * step) % 2 ** 32)).toBe(i * step);
      expect(count.unwrap((i * step + 2 ** 32 - 500) % 2 ** 32)).toBe(i * step - 500);
    }
  });
});
