// SPDX-License-Identifier: MIT
// gear-mesh: is the mesh tight at one place of the spur, or once in each turn of the pinion, and where.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { manualCaution, packCaution, polarityCaution } from '../cautions.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';
import { packLead, sensorCable, throttleLead } from '../wiring.ts';

export const gearMesh: Check<Evidence> = {
  id: 'gear-mesh',
  title: checkTitles['gear-mesh'],
  part: 'drive',
  why: 'A spur always runs a little out of true, so a mesh that is free at one place can be tight at another (common practice, no source): it eats gears, and heats the motor.',
  needs: {
    taps: ['controllerVoltage', 'packCurrentNarrow', 'packCurrentWide', 'railVoltage', 'thermistorMotor'],
    outputs: ['throttle', 'hallSupply'],
  },
  wiring: [
    { words: 'Car on a stand, wheels off; a dot of paint on one tooth of the spur.' },
    packLead,
    sensorCable,
    throttleLead,
  ],
  cautions: [
    'The wheels are off and nothing can reach into the gears: fingers, sleeves and hair stay away until the feed is off.',
    packCaution,
    polarityCaution,
    manualCaution,
  ],
  durationS: 50,
  place: 'mesh',
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
