// SPDX-License-Identifier: MIT
// rail-ripple: does the receiver rail stand still, or does its regulator ring?
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { manualCaution, packCaution, polarityCaution } from '../cautions.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';
import { packLead, railAdapter } from '../wiring.ts';

export const railRipple: Check<Evidence> = {
  id: 'rail-ripple',
  title: checkTitles['rail-ripple'],
  part: 'controller',
  why: 'A regulator that rings makes a servo buzz and a receiver drop out, though a meter shows the right voltage.',
  needs: {
    taps: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'],
    outputs: ['feed', 'load'],
  },
  wiring: [packLead, railAdapter],
  cautions: ['The load resistors get hot and stand free.', packCaution, polarityCaution, manualCaution],
  durationS: 8,
  moves: 'Nothing moves; the load bank gets warm.',
  place: 'rail',
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
