// SPDX-License-Identifier: MIT
// motor-heat: how much heat a motor takes up for a kelvin, and how hard it is to get it out.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { motorNoLoad } from '../motor-no-load/check.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';

export const motorHeat: Check<Evidence> = {
  id: 'motor-heat',
  title: checkTitles['motor-heat'],
  part: 'motor',
  why: 'With its heat capacity and the way to the air known, a temperature in the pits tells what the race put in.',
  needs: motorNoLoad.needs,
  wiring: motorNoLoad.wiring,
  cautions: [
    ...motorNoLoad.cautions,
    'The can gets hot, near 65 °C, and climbs on after the stop: bare metal of that temperature burns skin within a second or so (order of magnitude, from memory).',
  ],
  durationS: 555,
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
