// SPDX-License-Identifier: MIT
// A result as it is shown: taps by the names on screen, not by those of the wire.
import { expect, it } from 'vitest';
import type { Measured } from '#core/measurements/measurement';
import { resultView } from './verdict-view.ts';

const finding: Measured = {
  measured: true,
  id: 'x',
  title: 'X',
  value: 1,
  unit: 'A',
  u: 0.1,
  interval: [0.8, 1.2],
  budget: [],
  evidence: [],
  formula: '',
  notes: ['Not calibrated: railCurrent, packVoltage.'],
};

it('names taps in notes as the rest of the screen does', () =>
  expect(resultView(finding, undefined).notes).toEqual(['Not calibrated: rail current, pack voltage.']));
