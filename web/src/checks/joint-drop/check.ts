// SPDX-License-Identifier: MIT
// joint-drop: what joints, plugs and leads between pack, controller and motor cost, by four wires.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { fourWireCautions, fourWireWiring, stepS } from '../four-wire.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { jointsOf, resultOf } from './joint-list.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';

export const jointDrop: Check<Evidence> = {
  id: 'joint-drop',
  title: checkTitles['joint-drop'],
  part: 'leads',
  why: 'A milliohm in the way of 100 A is ten watts in one spot: a cold joint takes speed and melts its plug.',
  needs: {
    taps: ['jointProbe', 'jointProbeWide', 'packCurrentWide', 'packVoltage', 'thermistorAmbient'],
    outputs: ['packLoad'],
  },
  wiring: fourWireWiring,
  cautions: fourWireCautions,
  durationS: 4 * stepS,
  moves: 'Nothing moves: only the pack load is switched, a second at a time.',
  results,
  more: (car) => jointsOf(car).map(resultOf),
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
