// SPDX-License-Identifier: MIT
// servo-end-points: where the steering of a car binds on either side, and what to set at the radio.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { manualCaution, packCaution, polarityCaution } from '../cautions.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';
import { packLead, servoLead } from '../wiring.ts';

export const servoEndPoints: Check<Evidence> = {
  id: 'servo-end-points',
  title: checkTitles['servo-end-points'],
  part: 'servo',
  why: 'A servo held against the stop of the steering hums, heats and does not last; one that stops short of it steers less than it could.',
  needs: {
    taps: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'],
    outputs: ['steering'],
  },
  wiring: [packLead, servoLead, { words: 'Car on a stand, wheels off, linkage on the servo.' }],
  cautions: [
    'The steering moves by itself to both of its stops; fingers, wires and wheels stay out of it.',
    packCaution,
    polarityCaution,
    manualCaution,
  ],
  durationS: 40,
  moves: 'The steering goes in small steps to both of its stops and comes off them at once.',
  place: 'linkage',
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
