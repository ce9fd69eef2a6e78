// SPDX-License-Identifier: MIT
// Pulses at neutral before the horn goes on; then it is put on the tooth nearest to straight and read, and read once
// more with a longer pulse.
import type { Bench } from '../check.ts';
import { comeDownTo } from '../come-down.ts';
import { centreUs, railPlan } from '../rail-plan.ts';
import { keepStretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

const longerByUs = 300;
const moveS = 0.5;
const of = 3;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.powerUp(railPlan);
  bench.progress({ step: 1, of, words: 'The servo goes to its centre.', leftS: 4 });
  await comeDownTo(bench, centreUs);
  const rest = await keepStretch(bench, 0, 0.3);
  bench.progress({ step: 2, of, words: 'The horn goes on.', leftS: 3 });
  const atCentreDegrees = await bench.askNumber(
    'The servo stands at neutral. Put the horn on, on the tooth of the spline that brings it nearest to straight. Lay the protractor on: how far is the horn from straight? Clockwise, seen from above the horn, is positive.',
    { unit: 'degrees', min: -30, max: 30 },
  );
  bench.progress({ step: 3, of, words: `A pulse ${longerByUs} µs longer.`, leftS: 2 });
  await comeDownTo(bench, centreUs + longerByUs);
  const longerDegrees = await bench.askNumber(
    'The pulse is longer now, and the horn has turned. Read the protractor again: how far is the horn from straight? Clockwise is positive.',
    { unit: 'degrees', min: -90, max: 90 },
  );
  await bench.steer(centreUs, moveS);
  return { rest, atCentreDegrees, longerDegrees, longerByUs };
}
