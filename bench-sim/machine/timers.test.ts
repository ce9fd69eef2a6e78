// SPDX-License-Identifier: MIT
// Timer 1 outputs, flags, 16-bit access and input capture, on compiled programs.
import { describe, expect, it } from 'vitest';
import { fixtureChip, runMs, words } from '../../tests/support/fixture-chip.ts';

describe('compare outputs', () => {
  it('gives pulses exact to the cycle whatever the program does meanwhile', () => {
    const seen = fixtureChip('servo-pulses');
    runMs(seen.chip, 50);
    const [up, down] = seen.edgesOf('b', 1);
    expect([up.high, down.high]).toEqual([true, false]);
    expect(down.cycle - up.cycle).toBe((4000 - 1000) * 8);
    const b = seen.edgesOf('b', 2);
    expect(b[0].cycle - up.cycle).toBe(1000 * 8);
    expect(b[0].high).toBe(true);
    expect(b[1].cycle - b[0].cycle).toBe(100 * 8);
    expect(b[1].high).toBe(false);
  });

  it('repeats a match only once a turn of the counter', () => {
    const seen = fixtureChip('servo-pulses');
    runMs(seen.chip, 150);
    const toggles = seen.edgesOf('b', 2).map((edge) => edge.cycle);
    expect(toggles[2] - toggles[1]).toBe(65536 * 8);
  });

  it('shows match and overflow flags and 16-bit registers through TEMP', () => {
    const seen = fixtureChip('servo-pulses');
    runMs(seen.chip, 50);
    const [before, after] = seen.sent;
    expect(before).toBe(0x06); // OCF1A and OCF1B, no overflow yet
    expect(after & 1).toBe(1);
    const [count, compare] = words(seen.sent.slice(2, 6));
    expect(count).toBeLessThan(4); // read within a few ticks of the overflow
    expect(compare).toBe(4000);
  });
});

describe('input capture', () => {
  const run = (canceller: boolean, pulses: readonly (readonly [number, number])[]) => {
    const seen = fixtureChip('capture');
    const { chip } = seen;
    chip.ports.b.drive(0, false, 0);
    runMs(chip, 1);
    if (canceller) chip.usart.receive(Uint8Array.of(1));
    runMs(chip, 1);
    seen.sent.length = 0;
    const start = chip.cycles;
    const later: { cycle: number; high: boolean }[] = pulses.flatMap(([at, width]) => [
      { cycle: start + at, high: true },
      { cycle: start + at + width, high: false },
    ]);
    const slot = chip.queue.slot((due) => {
      chip.ports.b.drive(0, later.shift()!.high, due);
      if (later.length > 0) chip.queue.set(slot, later[0].cycle);
    });
    chip.queue.set(slot, later[0].cycle);
    runMs(chip, 5);
    return { captured: words(seen.sent), start };
  };

  it('takes the counter at the edge, not when the handler runs', () => {
    const { captured } = run(false, [
      [2000, 300],
      [9000, 300],
      [20000, 300],
    ]);
    expect(captured.length).toBe(3);
    expect((captured[1] - captured[0]) & 0xffff).toBe(7000);
    expect((captured[2] - captured[1]) & 0xffff).toBe(11000);
  });

  it('captures four cycles later with the noise canceller (data sheet), and drops a glitch of 3 cycles', () => {
    const plain = run(false, [
      [4000, 3],
      [8000, 400],
    ]);
    const cancelled = run(true, [
      [4000, 3],
      [8000, 400],
    ]);
    expect(plain.captured.length).toBe(2);
    expect(cancelled.captured.length).toBe(1);
    // The counter runs one a cycle and was started at the same cycle in both runs.
    const delay = (r: typeof plain, n: number) => (r.captured[n] - r.start) & 0xffff;
    expect((delay(cancelled, 0) - delay(plain, 1)) & 0xffff).toBe(4);
  });
});
