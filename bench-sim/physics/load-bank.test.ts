// SPDX-License-Identifier: MIT
// The load bank and the rig's shunt against Kirchhoff's laws, and the words that a person's acts are known by.
import { expect, it } from 'vitest';
import { actIn } from './bench-person.ts';
import { LoadBank } from './load-bank.ts';

it.each([0, 1, 2, 3, 4, 5, 6, 7])('mask %d obeys both laws with a servo beside it', (mask) => {
  const ohms: [number, number, number] = [10, 4.7, 2.2];
  const bank = new LoadBank(ohms, 0.01);
  const shuntA = bank.shuntA(mask, 6, 1.5);
  const plugV = bank.plugV(6, shuntA);
  const bankA = ohms.reduce((sum, ohm, bit) => sum + (mask & (1 << bit) ? plugV / ohm : 0), 0);
  expect(shuntA).toBeCloseTo(bankA + 1.5, 12);
  expect(6 - plugV).toBeCloseTo(0.01 * shuntA, 12);
});

it.each([
  ['Lay the horn against the block.', 'block'],
  ['block', 'block'],
  ['free', 'free'],
  ['Take the block away.', 'free'],
  ['Switch the controller on.', 'switch on'],
  ['The controller is switched off.', 'switch off'],
  ['stop pressed', null],
] as const)('"%s" is %s', (words, act) => expect(actIn(words)).toBe(act));
