// SPDX-License-Identifier: MIT
// first-power: the first time a controller meets a pack, through 10 ohm; only a pass unlocks the full feed.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { manualCaution, packCaution, polarityCaution } from '../cautions.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';
import { packLeadUnpowered } from '../wiring.ts';

export const firstPower: Check<Evidence> = {
  id: 'first-power',
  title: checkTitles['first-power'],
  part: 'controller',
  why: 'A short or a controller the wrong way round burns in an instant at the full pack; through 10 ohm it only shows.',
  needs: {
    taps: ['packVoltage', 'controllerVoltage', 'packCurrentNarrow', 'polarity'],
    outputs: ['feed', 'bleeder'],
  },
  wiring: [packLeadUnpowered, { words: 'Speed controller switched off; servo and fan unplugged.' }],
  cautions: [
    'Motor leads are insulated or soldered on, and nothing conductive lies on the bench.',
    packCaution,
    polarityCaution,
    manualCaution,
  ],
  durationS: 28,
  moves: 'Nothing moves; the speed controller is powered.',
  place: 'controller',
  provesFeed: true,
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
