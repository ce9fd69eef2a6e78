// SPDX-License-Identifier: MIT
// motor-coastdown: how a bare motor runs down by itself, and what its drag is made of.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { motorNoLoad } from '../motor-no-load/check.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';

export const motorCoastdown: Check<Evidence> = {
  id: 'motor-coastdown',
  title: checkTitles['motor-coastdown'],
  part: 'motor',
  why: 'How long a free motor runs on tells its friction without any current tap, and whether it is the bearings or the air.',
  needs: motorNoLoad.needs,
  wiring: motorNoLoad.wiring,
  cautions: motorNoLoad.cautions,
  durationS: 24,
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
