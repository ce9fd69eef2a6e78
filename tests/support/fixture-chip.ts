// SPDX-License-Identifier: MIT
// For tests: a chip or board running one of the small programs of fixtures/, with what it sent and which pins
// moved when. It knows nothing of the real firmware.
import { readFileSync } from 'node:fs';
import { Board, type BoardAnalog } from '#sim/machine/board';
import { Chip } from '#sim/machine/chip';
import { readHex } from '#sim/machine/intel-hex';

export const CLOCK_HZ = 16e6;
export interface PinEdge {
  readonly port: 'b' | 'c' | 'd';
  readonly bit: number;
  readonly high: boolean;
  readonly cycle: number;
}
export interface FixtureChip {
  readonly chip: Chip;
  readonly sent: number[];
  readonly sentAt: number[];
  readonly edges: PinEdge[];
  edgesOf(port: PinEdge['port'], bit: number): PinEdge[];
}
export const readFixture = (name: string) =>
  readHex(readFileSync(new URL(`../../bench-sim/machine/fixtures/${name}.hex`, import.meta.url), 'utf8'));

function observe(chip: Chip): FixtureChip {
  const seen: FixtureChip = {
    chip,
    sent: [],
    sentAt: [],
    edges: [],
    edgesOf: (port, bit) => seen.edges.filter((edge) => edge.port === port && edge.bit === bit),
  };
  chip.usart.onByte = (byte, cycle) => {
    seen.sent.push(byte);
    seen.sentAt.push(cycle);
  };
  for (const port of ['b', 'c', 'd'] as const) {
    chip.ports[port].listen((level, changed, cycle) => {
      for (let bit = 0; bit < 8; bit++) {
        if (changed & (1 << bit)) seen.edges.push({ port, bit, high: (level & (1 << bit)) !== 0, cycle });
      }
    });
  }
  return seen;
}

export function fixtureChip(name: string, readAnalog = (_channel: number, _cycle: number) => 0): FixtureChip {
  const analog = { avccV: 5, bandGapV: 1.1, readAnalog };
  const chip = new Chip({
    program: readFixture(name),
    clockHz: CLOCK_HZ,
    analog,
    resetHoldCycles: 1000,
    watchdogError: 0,
  });
  return observe(chip);
}

export function fixtureBoard(name: string, registerChance = 0): { board: Board; seen: FixtureChip } {
  const analog: BoardAnalog = { avccV: 5, bandGapV: 1.1, readTap: () => 0, readMultiplexer: () => 0 };
  const program = readFixture(name);
  const board = new Board({
    program,
    clockHz: CLOCK_HZ,
    analog,
    deadManS: 0.01,
    watchdogError: 0,
    registerChance,
  });
  return { board, seen: observe(board.chip) };
}

/** Runs so many milliseconds on. */
export function runMs(chip: Chip, ms: number): void {
  chip.run(chip.cycles + (ms / 1e3) * CLOCK_HZ);
}
export const words = (bytes: readonly number[]): number[] =>
  bytes.flatMap((low, i) => (i % 2 === 0 && i + 1 < bytes.length ? [low | (bytes[i + 1] << 8)] : []));
