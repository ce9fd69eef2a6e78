// SPDX-License-Identifier: MIT
// throttle-range: does the speed controller know the range it gets? With a bare motor in a stand.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { bareMotorCaution, manualCaution, packCaution, polarityCaution } from '../cautions.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';
import { packLead, sensorCable, throttleLead } from '../wiring.ts';

export const throttleRange: Check<Evidence> = {
  id: 'throttle-range',
  title: checkTitles['throttle-range'],
  part: 'controller',
  why: 'A controller that was not taught the range of its radio never gives full throttle, or wastes the end of the trigger.',
  needs: {
    taps: ['controllerVoltage', 'packCurrentNarrow', 'packCurrentWide', 'railVoltage', 'thermistorMotor'],
    outputs: ['throttle'],
  },
  wiring: [
    {
      words:
        'Clamp the bare motor in a stand, pinion off; throttle curve linear, zero timing, drag brake zero on the controller.',
    },
    packLead,
    sensorCable,
    throttleLead,
    {
      words:
        'The throttle widths on the controller are those that "Radio: ranges at the receiver" has found for this radio.',
    },
  ],
  cautions: [bareMotorCaution, packCaution, polarityCaution, manualCaution],
  durationS: 32,
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
