// SPDX-License-Identifier: MIT
// motor-no-load: current, kV and speed of a sensored motor that turns freely in a stand.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { bareMotorCaution, manualCaution, packCaution, polarityCaution } from '../cautions.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';
import { bareMotor, packLead, sensorCable, throttleLead } from '../wiring.ts';

export const motorNoLoad: Check<Evidence> = {
  id: 'motor-no-load',
  title: checkTitles['motor-no-load'],
  part: 'motor',
  why: 'A worn bearing or a weak rotor shows in what the motor draws and how fast it turns with nothing to drive.',
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
  cautions: [bareMotorCaution, packCaution, polarityCaution, manualCaution],
  durationS: 32,
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
