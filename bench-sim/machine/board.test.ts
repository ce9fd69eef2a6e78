// SPDX-License-Identifier: MIT
// The parts around the chip: shift registers both ways, dead-man, selector, and chance after power-on.
import { describe, expect, it } from 'vitest';
import { CaptureSelector } from './capture-selector.ts';
import { fixtureBoard, runMs, words } from '../../tests/support/fixture-chip.ts';

const say = (letter: string) => Uint8Array.of(letter.charCodeAt(0));

describe('board', () => {
  const start = (chance = 0) => {
    const { board, seen } = fixtureBoard('shift-out', chance);
    runMs(board.chip, 70);
    const ask = (letter: string, ms: number) => {
      board.chip.usart.receive(say(letter));
      runMs(board.chip, ms);
    };
    return { board, seen, ask };
  };

  it('keeps every output low until D7 is toggled, whatever the registers hold', () => {
    const { board, ask } = start(0xffff);
    expect([board.registers.register1, board.registers.register2]).toEqual([0, 0]);
    ask('t', 4.5);
    expect([board.registers.register1, board.registers.register2]).toEqual([0xff, 0xff]);
  });

  it('takes register 2 first and register 1 second, by SPI and bit by bit', () => {
    const { board, ask } = start();
    ask('s', 1);
    ask('t', 8.5);
    expect([board.registers.register2, board.registers.register1]).toEqual([0xa5, 0x3c]);
    ask('b', 1);
    expect([board.registers.register2, board.registers.register1]).toEqual([0x5a, 0xc3]);
  });

  it('takes 32 cycles for a byte of SPI at a quarter of the clock', () => {
    const { seen, ask } = start();
    ask('s', 1);
    const [took] = words(seen.sent);
    // 32 cycles for the transfer, the rest for the polling loop around it.
    expect(took).toBeGreaterThanOrEqual(32);
    expect(took).toBeLessThan(32 + 20);
  });

  it('drops the outputs 10 ms after the last edge at D7', () => {
    const { board, ask } = start();
    ask('s', 1);
    const changes: { on: boolean; cycle: number }[] = [];
    board.onOutputs = (cycle) => changes.push({ on: board.registers.register1 !== 0, cycle });
    ask('t', 30);
    expect(changes.map((c) => c.on)).toEqual([true, false]);
    // On at the fourth edge, then four more a millisecond apart, then 10 ms.
    expect((changes[1].cycle - changes[0].cycle) / 16e6).toBeCloseTo(0.014, 3);
  });
});

describe('capture selector', () => {
  it('passes the chosen line and low for none', () => {
    const selector = new CaptureSelector();
    const levels: boolean[] = [];
    selector.onLevel = (high) => levels.push(high);
    selector.drive(0, true, 1);
    selector.drive(1, true, 2);
    selector.select(3, 3);
    selector.select(1, 4);
    selector.drive(1, false, 5);
    selector.select(2, 6);
    expect(levels).toEqual([true, false, true, false]);
  });
});
