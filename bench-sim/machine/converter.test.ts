// SPDX-License-Identifier: MIT
// Conversion times, sample instants and input latching against the data sheet's figures (from memory):
// 25 clocks the first time, 13 after that, sampled at 13.5 and 1.5.
import { describe, expect, it } from 'vitest';
import { codeOf } from './converter.ts';
import { fixtureChip, runMs, words } from '../../tests/support/fixture-chip.ts';

const CLOCK = 128;

describe('converter', () => {
  const asked: { channel: number; cycle: number }[] = [];
  const volts = [1, 0, 0, 2, 0, 0, 0, 3];
  const seen = fixtureChip('free-running', (channel, cycle) => {
    asked.push({ channel, cycle });
    return volts[channel];
  });
  runMs(seen.chip, 5);
  const toggles = seen.edgesOf('d', 2).map((edge) => edge.cycle);

  it('runs freely at 13 clocks a conversion with 25 for the first', () => {
    const entries = toggles.slice(1);
    // The handler's latency varies by an instruction or two; over 40 conversions it can't add up.
    expect(Math.abs((entries[40] - entries[0]) / 40 - 13 * CLOCK)).toBeLessThan(0.2);
    expect(entries[0] - toggles[0]).toBeGreaterThan(25 * CLOCK);
    expect(entries[0] - toggles[0]).toBeLessThan(26 * CLOCK + 40);
  });

  it('samples 1.5 clocks after a start, 13.5 the first time', () => {
    expect(asked[1].cycle - asked[0].cycle).toBe((25 - 13.5 + 1.5) * CLOCK);
    // Conversions 1, 2 and 4 (the third is the band-gap, which asks nobody).
    expect(asked[2].cycle - asked[1].cycle).toBe(13 * CLOCK);
  });

  it('takes the input that stands when a conversion starts: a change in the handler counts one later', () => {
    const codes = words(seen.sent);
    // Input 0 first, 3 set while it ran; the handler after it sets 7, which is converted third, not second.
    expect(codes.slice(0, 6)).toEqual([1, 2, 3, 1.1, 1, 2].map((v) => codeOf(v, 5)));
  });

  it('rounds at half an LSB and clips', () => {
    const lsb = 5 / 1024;
    expect([0.49, 0.51, 1.49].map((n) => codeOf(n * lsb, 5))).toEqual([0, 1, 1]);
    expect([-1, 6].map((v) => codeOf(v, 5))).toEqual([0, 1023]);
  });
});
