// SPDX-License-Identifier: MIT
// servo-idle: what a servo draws at its centre with the horn free, whether it hunts, how wide its dead band is.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { manualCaution, packCaution, polarityCaution } from '../cautions.ts';
import { servoOutWiring } from '../servo-wiring.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';

export const servoIdle: Check<Evidence> = {
  id: 'servo-idle',
  title: checkTitles['servo-idle'],
  part: 'servo',
  why: 'A servo that hums or hunts at rest gets hot and empties the pack; a wide dead band steers vaguely.',
  needs: {
    taps: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'],
    outputs: ['steering'],
  },
  wiring: servoOutWiring,
  cautions: ['Nothing touches the horn: it is free to move.', packCaution, polarityCaution, manualCaution],
  durationS: 28,
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
