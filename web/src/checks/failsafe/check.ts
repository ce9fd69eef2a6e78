// SPDX-License-Identifier: MIT
// failsafe: what the receiver does with the throttle when the transmitter is gone, and when it comes back.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { listeningCautions, listeningPlan, listeningWiring } from '../receiver-power.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';

export const failsafe: Check<Evidence> = {
  id: 'failsafe',
  title: checkTitles.failsafe,
  part: 'radio',
  why: 'A car that keeps its throttle when the radio is lost runs until it hits something.',
  needs: { taps: [...listeningPlan.fast], outputs: [] },
  wiring: listeningWiring,
  cautions: listeningCautions,
  durationS: 35,
  moves: 'The steering follows the wheel of the radio; the motor gets no pulses.',
  place: 'receiver',
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
