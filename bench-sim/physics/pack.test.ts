// SPDX-License-Identifier: MIT
// The pack against the closed form of one RC pair, v1 = i R1 (1 - exp(-t/(R1 C1))), against charge counted, and
// as the d.c. resistance that a two-step discharge finds.
import { describe, expect, it } from 'vitest';
import { cellOpenV, chargeAt, Pack } from './pack.ts';

const stepS = 8e-6;
const plain = {
  capacityAh: 5,
  charge: [0.8, 0.82] as [number, number],
  seriesOhm: 0.01,
  polarisationOhm: 0.006,
  polarisationS: 2,
  lowerShare: 0.5,
  reversed: false,
};
const run = (pack: Pack, seconds: number, packA: number) => {
  for (let k = 0; k < Math.round(seconds / stepS); k++) pack.step(packA);
  pack.settle();
};

describe('one pair', () => {
  it.each([0.2, 2, 6])('after %d s of 10 A has its closed form', (seconds) => {
    const pack = new Pack(plain, stepS);
    run(pack, seconds, 10);
    expect(pack.polarisationV).toBeCloseTo(0.06 * (1 - Math.exp(-seconds / 2)), 9);
  });
  it('gives R0 + R1 between two long steps', () => {
    const pack = new Pack({ ...plain, capacityAh: 1e9 }, stepS);
    const terminalV = (packA: number) => pack.sourceV - packA * plain.seriesOhm;
    run(pack, 12, 1);
    const first = terminalV(1);
    run(pack, 12, 5);
    expect((first - terminalV(5)) / 4).toBeCloseTo(0.016, 4);
  });
});

describe('charge', () => {
  it('is counted: 10 A for 36 s take 0.1 Ah', () => {
    const pack = new Pack(plain, stepS);
    run(pack, 36, 10);
    expect(pack.takenC / 3600).toBeCloseTo(0.1, 6);
    expect(pack.openV).toBeCloseTo(cellOpenV(0.78) + cellOpenV(0.8), 6);
  });
  it('gives a rising voltage, and a voltage gives back its charge', () => {
    const charges = Array.from({ length: 21 }, (_, i) => i / 20);
    const volts = charges.map(cellOpenV);
    expect(volts.toSorted((a, b) => a - b)).toEqual(volts);
    for (const charge of charges) expect(chargeAt(cellOpenV(charge))).toBeCloseTo(charge, 9);
  });
  it('shows the lower cell at the balance tap, sagging by half the drop', () => {
    const pack = new Pack(plain, stepS);
    expect(pack.lowerCellV(0)).toBeCloseTo(cellOpenV(0.8), 9);
    expect(pack.lowerCellV(0) - pack.lowerCellV(10)).toBeCloseTo(0.05, 9);
  });
  it('gives a weak lower cell its part of the drop', () => {
    const weak = new Pack({ ...plain, lowerShare: 0.8 }, stepS);
    expect(weak.lowerCellV(0) - weak.lowerCellV(10)).toBeCloseTo(0.08, 9);
  });
  it('shows the upper cell below zero when its plug is changed over', () => {
    const reversed = new Pack({ ...plain, reversed: true }, stepS);
    expect(reversed.midV(0)).toBeCloseTo(-cellOpenV(0.82), 9);
    expect(new Pack(plain, stepS).midV(0)).toBeCloseTo(cellOpenV(0.8), 9);
  });
});
