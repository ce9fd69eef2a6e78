// SPDX-License-Identifier: MIT
// pack-sag: how far does the pack fall under load, and does one cell fall further than the other?
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { manualCaution, packCaution, polarityCaution } from '../cautions.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';
import { balanceLead, packLead, railAdapter } from '../wiring.ts';

export const packSag: Check<Evidence> = {
  id: 'pack-sag',
  title: checkTitles['pack-sag'],
  part: 'pack',
  why: 'A tired pack or one weak cell takes speed from the first lap and lets the rail fall at the end.',
  needs: {
    taps: ['packVoltage', 'packCurrentWide', 'midCell', 'railVoltage'],
    outputs: ['feed', 'load', 'packLoad'],
  },
  wiring: [packLead, balanceLead, railAdapter],
  cautions: [
    'The pack load takes 17 A for a second at a time: its resistor gets hot and stands free.',
    packCaution,
    polarityCaution,
    manualCaution,
  ],
  durationS: 50,
  moves: 'Nothing moves; the loads get hot.',
  place: 'pack',
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
