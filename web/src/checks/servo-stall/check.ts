// SPDX-License-Identifier: MIT
// servo-stall: what a servo draws with its horn against a block, taken back to the moment of stall.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { manualCaution, packCaution, polarityCaution } from '../cautions.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';
import { packLead, servoThermistor } from '../wiring.ts';

export const servoStall: Check<Evidence> = {
  id: 'servo-stall',
  title: checkTitles['servo-stall'],
  part: 'servo',
  why: 'A servo motor with worn brushes or windings lets less current through, and has less torque, than its label says.',
  needs: {
    taps: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide', 'thermistorServo'],
    outputs: ['steering'],
  },
  wiring: [
    packLead,
    {
      words:
        'Servo out of the car or its linkage off; servo lead into the rail adapter at the receiver slot.',
      tap: 'railVoltage',
    },
    servoThermistor,
    { words: 'A firm block ready beside the horn. Never against the steering stops of a car.' },
  ],
  cautions: [
    'The servo is held down, its linkage is off, fingers stay away from horn and block: a stalled servo pushes hard and gets hot.',
    packCaution,
    polarityCaution,
    manualCaution,
  ],
  durationS: 46,
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
