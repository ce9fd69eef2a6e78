// SPDX-License-Identifier: MIT
// servo-centre: the horn put on while pulses stand at neutral, and what is left to trim.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { manualCaution, packCaution, polarityCaution } from '../cautions.ts';
import { servoOutWiring } from '../servo-wiring.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';

export const servoCentre: Check<Evidence> = {
  id: 'servo-centre',
  title: checkTitles['servo-centre'],
  part: 'servo',
  why: 'A horn a tooth off, or much sub-trim, takes away travel on one side; the way it turns is known before the first drive.',
  needs: {
    taps: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'],
    outputs: ['steering'],
  },
  wiring: [...servoOutWiring, { words: 'Horn off its spline, beside it ready; a protractor at hand.' }],
  cautions: [
    'Fingers are off the horn and the spline whenever the bench says that the servo moves.',
    packCaution,
    polarityCaution,
    manualCaution,
  ],
  durationS: 20,
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
