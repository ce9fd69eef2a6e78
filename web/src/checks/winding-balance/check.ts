// SPDX-License-Identifier: MIT
// winding-balance: phase to phase by four wires, three pairs.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { fourWireCautions, fourWireWiring, stepS } from '../four-wire.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { proposes } from './measured-winding.ts';
import { procedure } from './procedure.ts';

export const windingBalance: Check<Evidence> = {
  id: 'winding-balance',
  title: checkTitles['winding-balance'],
  part: 'motor',
  why: 'A winding with a bad joint or with turns shorted pulls unevenly and gets hot; it shows between the pairs of phases.',
  needs: {
    taps: [
      'jointProbe',
      'jointProbeWide',
      'packCurrentWide',
      'packVoltage',
      'thermistorMotor',
      'thermistorAmbient',
    ],
    outputs: ['packLoad'],
  },
  wiring: [
    ...fourWireWiring,
    { words: 'Thermistor of the sensor cable through the sensor adapter.', tap: 'thermistorMotor' },
    { words: 'The motor has rested until it is as warm as the air; pinion off.' },
  ],
  cautions: [
    'The rotor jerks to another place when the current comes: pinion off, fingers, sleeves and hair away.',
    ...fourWireCautions,
  ],
  durationS: 3 * stepS,
  moves: 'The rotor jerks once in each step, by less than a turn.',
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
  proposes,
};
