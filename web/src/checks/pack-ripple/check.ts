// SPDX-License-Identifier: MIT
// pack-ripple: does the capacitor at the controller's posts still keep the ripple away from the pack?
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { manualCaution, packCaution, polarityCaution } from '../cautions.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';
import { bareMotor, packLead, sensorCable, throttleLead } from '../wiring.ts';

export const packRipple: Check<Evidence> = {
  id: 'pack-ripple',
  title: checkTitles['pack-ripple'],
  part: 'controller',
  why: 'A dried capacitor still charges like a sound one, but leaves the controller alone with its own ripple.',
  needs: {
    taps: ['packCurrentWide', 'packCurrentNarrow', 'controllerVoltage', 'railVoltage'],
    outputs: ['feed', 'throttle', 'packLoad'],
  },
  wiring: [bareMotor, sensorCable, packLead, throttleLead],
  cautions: [
    'The motor is clamped in a stand with its pinion off; eyes are protected, sleeves and hair away.',
    'The pack load comes on twice for a moment at the end: its resistor stands free.',
    packCaution,
    polarityCaution,
    manualCaution,
  ],
  durationS: 42,
  moves: 'The motor spins up to half throttle.',
  place: 'controller',
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
