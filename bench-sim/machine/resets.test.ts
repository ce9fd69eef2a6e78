// SPDX-License-Identifier: MIT
// Resets: what each cause leaves in MCUSR, what a watchdog reset clears and what it leaves.
import { describe, expect, it } from 'vitest';
import { fixtureChip, runMs } from '../../tests/support/fixture-chip.ts';

const [POWER_ON, EXTERNAL, BROWN_OUT, WATCHDOG] = [1, 2, 4, 8];

describe('resets', () => {
  it('interrupts first and resets at the second watchdog time, with everything back but RAM', () => {
    const seen = fixtureChip('watchdog');
    runMs(seen.chip, 30);
    // cause, watchdog control, mark, resets, DDRB, TCCR1B
    expect(seen.sent).toEqual([POWER_ON, 0, 0, 1, 0, 0]);
    expect(seen.chip.ports.b.level & 2).toBe(2);
    runMs(seen.chip, 60);
    expect(seen.sent.slice(6)).toEqual([WATCHDOG, 0x08, 0x5a, 2, 0, 0]);
  });

  it('releases the pins at the reset, 2 x 32 ms after the watchdog was set', () => {
    const seen = fixtureChip('watchdog');
    runMs(seen.chip, 80);
    const [up, down] = seen.edgesOf('b', 1);
    // 4096 and 4096 periods of the 128 kHz oscillator.
    expect((down.cycle - up.cycle) / 16e6).toBeCloseTo((2 * 4096) / 128e3, 5);
  });

  it.each([
    ['external', EXTERNAL],
    ['brownOut', BROWN_OUT],
    ['powerOn', POWER_ON],
  ] as const)('says %s in MCUSR', (cause, bit) => {
    const seen = fixtureChip('watchdog');
    runMs(seen.chip, 1);
    seen.sent.length = 0;
    seen.chip.reset(cause);
    runMs(seen.chip, 1);
    expect(seen.sent[0]).toBe(bit);
  });

  it('drops pending events: no pulse edge after a reset', () => {
    const seen = fixtureChip('servo-pulses');
    seen.chip.run(1000 + 1500 * 8);
    expect(seen.chip.ports.b.level & 2).toBe(2);
    seen.chip.holdReset('external', 16e6);
    const count = seen.edges.length;
    runMs(seen.chip, 500);
    expect(seen.edges.length).toBe(count);
    expect(seen.chip.ports.b.level & 2).toBe(0);
  });
});
