// SPDX-License-Identifier: MIT
// timing-sweep: what each mark of the end bell brings in speed and costs in current and heat.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { bareMotorCaution, manualCaution, packCaution, polarityCaution } from '../cautions.ts';
import { motorNoLoad } from '../motor-no-load/check.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';

export const timingSweep: Check<Evidence> = {
  id: 'timing-sweep',
  title: checkTitles['timing-sweep'],
  part: 'motor',
  why: 'More advance turns a motor faster and makes it hotter; where the trade stops being worth it is different for every motor.',
  needs: motorNoLoad.needs,
  wiring: motorNoLoad.wiring,
  cautions: [
    bareMotorCaution,
    'I touch the end bell only while the rig says that the feed is off; a can that has just run is hot.',
    packCaution,
    polarityCaution,
    manualCaution,
  ],
  durationS: 80,
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
