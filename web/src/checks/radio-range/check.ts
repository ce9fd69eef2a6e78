// SPDX-License-Identifier: MIT
// radio-range: what the receiver gives on both channels while the driver works wheel and trigger.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { listeningCautions, listeningPlan, listeningWiring } from '../receiver-power.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { proposes } from './learnt-widths.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';

export const radioRange: Check<Evidence> = {
  id: 'radio-range',
  title: checkTitles['radio-range'],
  part: 'radio',
  why: 'Servo and speed controller only know the pulses that the receiver gives; the widths learnt here are the ones the rig drives with.',
  needs: { taps: [...listeningPlan.fast], outputs: [] },
  wiring: listeningWiring,
  cautions: listeningCautions,
  durationS: 40,
  moves: 'The steering follows the wheel of the radio; the motor gets no pulses.',
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
  proposes,
};
