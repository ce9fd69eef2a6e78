// SPDX-License-Identifier: MIT
// servo-speed: how long a servo takes for 60 degrees, from moves of four lengths each way.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { manualCaution, packCaution, polarityCaution } from '../cautions.ts';
import { servoOutWiring } from '../servo-wiring.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';

export const servoSpeed: Check<Evidence> = {
  id: 'servo-speed',
  title: checkTitles['servo-speed'],
  part: 'servo',
  why: 'A servo that got slow has stiff gears or too little voltage. Worn brushes hardly slow it while its horn is free: its stall current tells them.',
  needs: {
    taps: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'],
    outputs: ['steering'],
  },
  wiring: [...servoOutWiring, { words: 'Horn on, nothing in its way; a protractor at hand.' }],
  cautions: [
    'The servo is held down and fingers stay away: its horn swings from side to side at full speed, unannounced.',
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
