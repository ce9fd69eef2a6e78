// SPDX-License-Identifier: MIT
// What the faults of supply and receiver rail do to a healthy car's numbers. Severity 0 leaves every number as it was.
import type { Effects } from './fault-effects.ts';
import { cellOpenV, chargeAt } from './pack.ts';
import type { CarParameters } from './parameters.ts';
import { railSourceOhm } from './steady-state.ts';

/** Brings a cell towards another resting voltage. */
const restAt = ({ pack }: CarParameters, cell: 0 | 1, cellV: (nowV: number) => number): void => {
  pack.charge[cell] = chargeAt(cellV(cellOpenV(pack.charge[cell])));
};

export const supplyEffects: Effects = {
  'soft-rail': (car, severity) => {
    car.rail.droopOhm += severity * (0.14 - railSourceOhm(car));
  },
  'reversed-pack': ({ pack }) => {
    pack.reversed = true;
  },
  'unequal-cells': (car, severity) => restAt(car, 0, (nowV) => nowV - 0.6 * severity),
  'flat-pack': (car, severity) => {
    for (const cell of [0, 1] as const) restAt(car, cell, (nowV) => nowV + severity * (3.15 - nowV));
  },
  'shorted-controller': ({ line }, severity) => {
    line.shortS = 20 * severity;
  },
  'reversed-controller': ({ line }) => {
    line.diodeV = 1.3;
    line.diodeS = 10;
  },
  'reversed-capacitor': ({ line }, severity) => {
    line.diodeV = 1.1;
    line.diodeS = 2 * severity;
  },
  'missing-capacitor': ({ line }, severity) => {
    line.capacitanceF += severity * (47e-6 - line.capacitanceF);
  },
  'leaking-capacitor': ({ line }, severity) => {
    line.leakA += 0.15 * severity;
  },
  'tired-pack': ({ pack }, severity) => {
    pack.seriesOhm += severity * (40e-3 - pack.seriesOhm);
  },
  'weak-cell': ({ pack }, severity) => {
    const upperOhm = pack.seriesOhm * (1 - pack.lowerShare);
    const lowerOhm = pack.seriesOhm * pack.lowerShare;
    pack.seriesOhm = upperOhm + lowerOhm + severity * (20e-3 - lowerOhm);
    pack.lowerShare = 1 - upperOhm / pack.seriesOhm;
  },
  'ringing-rail': ({ rail }, severity) => {
    rail.ringV = 0.25 * severity;
  },
  'dried-capacitor': ({ line }, severity) => {
    line.esrOhm *= 1 + 29 * severity;
    line.capacitanceF *= 1 - 0.1 * severity;
  },
  'wrong-rail-setting': ({ rail }, severity) => {
    const otherV = rail.settingV < 6.7 ? 7.4 : 6;
    rail.settingV += severity * (otherV - rail.settingV);
  },
  'no-head-room': (car, severity) => {
    const cellV = (car.rail.settingV + 0.4 - 0.1 * severity) / 2;
    for (const cell of [0, 1] as const) restAt(car, cell, (nowV) => nowV + severity * (cellV - nowV));
  },
  'rail-current-limit': ({ rail }, severity) => {
    rail.limitA += severity * (1.5 - rail.limitA);
  },
};
