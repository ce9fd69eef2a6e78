// SPDX-License-Identifier: MIT
// sensor-cable: three Hall lines and a thermistor, turned by hand with nothing else switched on.
import { checkTitles } from '#core/titles/check-titles';
import type { Check } from '../check.ts';
import { manualCaution } from '../cautions.ts';
import { analyse, results } from './analysis.ts';
import { evidenceSchema, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { procedure } from './procedure.ts';

export const sensorCable: Check<Evidence> = {
  id: 'sensor-cable',
  title: checkTitles['sensor-cable'],
  part: 'motor',
  why: 'A dead, swapped or loose line of the sensor cable makes a motor stutter or run hot, and every check of its speed wrong.',
  needs: { taps: ['thermistorMotor', 'thermistorAmbient'], outputs: ['hallSupply'] },
  wiring: [
    {
      words:
        'Pack unplugged; the rotor free to turn by hand: bare motor in a stand, or in the car with the wheels clear.',
    },
    {
      words: 'Motor end of the sensor cable into the sensor adapter; the controller end stays unplugged.',
      tap: 'thermistorMotor',
    },
    { words: 'The other thermistor in the air beside the motor.', tap: 'thermistorAmbient' },
  ],
  cautions: [
    'The pack is unplugged and stays so: the motor is turned by hand, and nothing may drive it meanwhile.',
    manualCaution,
  ],
  durationS: 30,
  moves: 'You turn the rotor by hand',
  place: 'harness',
  results,
  evidenceSchema,
  procedure,
  analyse,
  limits,
};
