// SPDX-License-Identifier: MIT
// Sleep, interrupt entry, stack depth, EEPROM, pin interrupts: what the stock core lacks or does otherwise.
import { describe, expect, it } from 'vitest';
import { fixtureChip, runMs } from '../../tests/support/fixture-chip.ts';
import { vectors } from './registers.ts';

describe('sleep', () => {
  it('wakes to the cycle: a timer period between toggles, entry in 4 + 4 cycles', () => {
    const seen = fixtureChip('sleeper');
    runMs(seen.chip, 50);
    const toggles = seen.edgesOf('d', 2).map((edge) => edge.cycle);
    const gaps = new Set(toggles.slice(1).map((at, i) => at - toggles[i]));
    expect([...gaps]).toEqual([16000]);
    const figures = seen.chip.instruments.of(vectors.timer2CompareA);
    expect(figures.worstLatencyCycles).toBe(4);
    expect(seen.chip.instruments.idleShare(seen.chip.cycles)).toBeGreaterThan(0.95);
  });

  it('never sleeps through an interrupt that comes between the test and SLEEP', () => {
    const seen = fixtureChip('sleeper');
    runMs(seen.chip, 400);
    // Each odd tick is seen by the very next turn of the main loop, so the count sent is 2, 4, 6 ...
    expect(seen.sent.slice(0, 100)).toEqual(Array.from({ length: 100 }, (_, i) => (2 * (i + 1)) & 0xff));
  });
});

describe('sleep that begins with an interrupt pending', () => {
  it('wakes at once', () => {
    const seen = fixtureChip('pending-sleep');
    runMs(seen.chip, 20.5);
    expect(seen.sent.length).toBe(20);
  });
});

describe('stack', () => {
  it('is 2 KiB with its deepest point tracked, and an overflow runs into the variables', () => {
    const depth = (levels: number) => {
      const seen = fixtureChip('deep-stack');
      runMs(seen.chip, 1);
      seen.chip.usart.receive(Uint8Array.of(levels));
      runMs(seen.chip, 5);
      return seen.chip.instruments;
    };
    const two = depth(2).lowestStack;
    const twelve = depth(12).lowestStack;
    expect((two - twelve) % 10).toBe(0);
    expect((two - twelve) / 10).toBeGreaterThanOrEqual(10);
    // 1000 bytes of .bss from 0x100 (avr-nm of the fixture: __bss_end).
    expect(depth(2).staticEnd).toBe(0x100 + 1000);
    expect(depth(12).stackOverflowed).toBe(false);
    expect(depth(90).stackOverflowed).toBe(true);
  });
});

describe('EEPROM', () => {
  it('writes in 3.4 ms, interrupts when ready, needs its unlock, keeps its content over a reset', () => {
    const seen = fixtureChip('store');
    seen.chip.eeprom.content[5] = 41;
    runMs(seen.chip, 10);
    expect(seen.sent).toEqual([41, 42, 0]);
    const [start, ready] = seen.edgesOf('d', 2).map((edge) => edge.cycle);
    expect((ready - start) / 16e6).toBeCloseTo(3.4e-3, 4);
    seen.chip.reset('external');
    runMs(seen.chip, 10);
    expect(seen.sent.slice(3)).toEqual([42, 43, 0]);
    expect(seen.chip.eeprom.content[6]).toBe(0xff);
  });
});

describe('pin interrupts', () => {
  it('answers the enabled pins of all three ports and INT0, and no others', () => {
    const seen = fixtureChip('pin-change');
    const { chip } = seen;
    const { b, c, d } = chip.ports;
    runMs(chip, 1);
    const steps: (readonly [() => void, string])[] = [
      [() => b.drive(4, true, chip.cycles), 'b'],
      [() => b.drive(3, true, chip.cycles), ''],
      [() => c.drive(0, true, chip.cycles), 'c'],
      [() => d.drive(5, true, chip.cycles), 'd'],
      [() => d.drive(6, true, chip.cycles), 'd'],
      [() => d.drive(7, true, chip.cycles), ''],
      [() => d.drive(2, true, chip.cycles), ''],
      [() => d.drive(2, false, chip.cycles), '0'],
      [() => b.drive(4, false, chip.cycles), 'b'],
    ];
    for (const [act, letters] of steps) {
      seen.sent.length = 0;
      act();
      runMs(chip, 1);
      expect(String.fromCharCode(...seen.sent)).toBe(letters);
    }
  });
});
