// SPDX-License-Identifier: MIT
// servo-heat: how hot a steering servo gets at hard work, and will be at the flag.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { manualCaution, packCaution, polarityCaution } from '../cautions.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { fullLengthS, procedure } from './procedure.ts';
import { packLead, servoLead, servoThermistor } from '../wiring.ts';

export const servoHeat: Check<Evidence> = {
  id: 'servo-heat',
  title: checkTitles['servo-heat'],
  part: 'servo',
  why: 'A servo that is warm on the bench may be too hot at the flag; its own rise tells, as far as the run reaches.',
  needs: {
    taps: [
      'railVoltage',
      'railCurrent',
      'controllerVoltage',
      'packCurrentWide',
      'thermistorServo',
      'thermistorAmbient',
    ],
    outputs: ['steering'],
  },
  wiring: [
    packLead,
    servoLead,
    servoThermistor,
    { words: 'Thermistor in the air beside the car.', tap: 'thermistorAmbient' },
    { words: 'Car on its tyres on the surface it races on; end points found before; servo cold.' },
  ],
  cautions: [
    'The steering works for minutes by itself; fingers, wires and leads stay out of it. The servo gets hot: 65 °C burns skin.',
    packCaution,
    polarityCaution,
    manualCaution,
  ],
  durationS: fullLengthS + 12,
  moves: 'The steering moves from lock to lock for four minutes with the car on the ground.',
  place: 'servo',
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
