// SPDX-License-Identifier: MIT
// rail-sag: does the receiver rail hold while the load bank and the servo work it their hardest?
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { manualCaution, packCaution, polarityCaution } from '../cautions.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';
import { packLead } from '../wiring.ts';

export const railSag: Check<Evidence> = {
  id: 'rail-sag',
  title: checkTitles['rail-sag'],
  part: 'controller',
  place: 'rail',
  why: 'A receiver that loses its voltage lets go of the car; the servo at full work is what pulls the rail down.',
  needs: {
    taps: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'],
    outputs: ['steering', 'load'],
  },
  wiring: [
    packLead,
    {
      words: 'Rail adapter with the load bank into a free receiver slot, servo lead through it.',
      tap: 'railVoltage',
    },
    { words: 'Pull or name every other load on the rail: fan, transponder, lights.' },
  ],
  cautions: [
    'The load resistors get hot and stand free; the servo can move to both sides without touching anything.',
    packCaution,
    polarityCaution,
    manualCaution,
  ],
  durationS: 36,
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
