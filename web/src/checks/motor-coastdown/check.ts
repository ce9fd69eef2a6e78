// SPDX-License-Identifier: MIT
// motor-coastdown: how a bare motor runs down by itself, and what its drag is made of.
import type { Check } from '../check.ts';
import { manualCaution, packCaution, polarityCaution } from '../cautions.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';
import { bareMotor, packLead, sensorCable, throttleLead } from '../wiring.ts';

export const motorCoastdown: Check<Evidence> = {
  id: 'motor-coastdown',
  title: 'Motor: run-down',
  part: 'motor',
  why: 'How long a free motor runs on tells its friction without any current tap, and whether it is the bearings or the air.',
  needs: {
    taps: [
      'controllerVoltage',
      'packCurrentNarrow',
      'packCurrentWide',
      'railVoltage',
      'thermistorMotor',
      'thermistorAmbient',
    ],
    outputs: ['throttle'],
  },
  wiring: [bareMotor, packLead, sensorCable, throttleLead],
  cautions: [
    'The motor is clamped in a stand, pinion off, nothing can touch the rotor; eyes are protected, sleeves and hair away.',
    packCaution,
    polarityCaution,
    manualCaution,
  ],
  durationS: 24,
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
