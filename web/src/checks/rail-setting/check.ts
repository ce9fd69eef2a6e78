// SPDX-License-Identifier: MIT
// rail-setting: does the receiver rail stand where it was set, and what is left of it in a race?
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { manualCaution, packCaution, polarityCaution } from '../cautions.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';
import { packLead, railAdapter } from '../wiring.ts';

export const railSetting: Check<Evidence> = {
  id: 'rail-setting',
  title: checkTitles['rail-setting'],
  part: 'controller',
  why: 'A rail set too high burns a servo, and a regulator without head-room lets the rail fall with the pack.',
  needs: {
    taps: ['railVoltage', 'controllerVoltage', 'packVoltage', 'packCurrentNarrow'],
    outputs: ['feed', 'load'],
  },
  wiring: [packLead, railAdapter],
  cautions: ['The load resistors get hot and stand free.', packCaution, polarityCaution, manualCaution],
  durationS: 15,
  moves: 'Nothing moves; the load bank gets warm.',
  place: 'rail',
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
