// SPDX-License-Identifier: MIT
// rest-voltage: is the pack the right way round, full enough, and are its cells alike? Nothing is switched on.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { packCaution } from '../cautions.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';
import { balanceLead, packLeadUnpowered } from '../wiring.ts';

export const restVoltage: Check<Evidence> = {
  id: 'rest-voltage',
  title: checkTitles['rest-voltage'],
  part: 'pack',
  why: 'A reversed pack kills a speed controller at once, and one weak cell ends a race early.',
  needs: { taps: ['packVoltage', 'polarity', 'midCell'], outputs: [] },
  wiring: [packLeadUnpowered, balanceLead],
  cautions: [packCaution],
  durationS: 3,
  moves: 'Nothing is switched on and nothing moves.',
  place: 'pack',
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
