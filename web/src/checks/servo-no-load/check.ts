// SPDX-License-Identifier: MIT
// servo-no-load: what a free servo draws at full speed and in slow sweeps, and where it is tight.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { manualCaution, packCaution, polarityCaution } from '../cautions.ts';
import { servoOutWiring } from '../servo-wiring.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';

export const servoNoLoad: Check<Evidence> = {
  id: 'servo-no-load',
  title: checkTitles['servo-no-load'],
  part: 'servo',
  why: 'Stiff gears and tight spots heat a servo and wear it; it is cheaper to find them before it strips a tooth.',
  needs: {
    taps: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'],
    outputs: ['steering'],
  },
  wiring: servoOutWiring,
  cautions: [
    'The servo is held down and nothing touches the horn: it swings from side to side at full speed.',
    packCaution,
    polarityCaution,
    manualCaution,
  ],
  durationS: 28,
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
