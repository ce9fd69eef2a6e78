// SPDX-License-Identifier: MIT
// servo-scrub: what turning the tyres on the spot takes of servo and rail.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { manualCaution, packCaution, polarityCaution } from '../cautions.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';
import { packLead, servoLead, servoThermistor } from '../wiring.ts';

export const servoScrub: Check<Evidence> = {
  id: 'servo-scrub',
  title: checkTitles['servo-scrub'],
  part: 'servo',
  why: 'Turning standing tyres is the hardest work of a steering servo: it shows a servo too weak for the car, heavy steering, and a rail that gives way.',
  needs: {
    taps: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide', 'thermistorServo'],
    outputs: ['steering'],
  },
  wiring: [
    packLead,
    servoLead,
    servoThermistor,
    { words: 'Car on its tyres on the surface it races on; end points found before.' },
  ],
  cautions: [
    'The steering moves from lock to lock by itself; fingers, wires and leads stay out of it.',
    packCaution,
    polarityCaution,
    manualCaution,
  ],
  durationS: 26,
  moves: 'The steering moves ten times from lock to lock with the car on the ground.',
  place: 'servo',
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
