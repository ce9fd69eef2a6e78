// SPDX-License-Identifier: MIT
// Dead band from slow ramps of the pulse: whether the servo follows smoothly or in leaps, and the way that suits it. Pure.
import { mean } from 'simple-statistics';
import type { Quantity } from '#core/measurements/quantity';
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { Stretch } from '../stretch.ts';
import { type CurrentRun, currentRuns, type SmoothCurrent, smoothCurrent } from './current-runs.ts';
import { alternatingOf } from './hunting.ts';
import { leapBand } from './leap-band.ts';
import { fewestTurns, followsNot, type Input } from './ramp-width.ts';
import { shares, smoothBand } from './smooth-band.ts';

/** Share of the second half of the ramps with current: a servo that leaps is silent between its leaps. */
const smoothShare = 0.8;
/** Pulses of current a second at rest. */
const hunts = 1;
/** Of the noise: less and nothing stands out of it. */
const leastTop = 1.5;

/** us; `idleA`: the rail current at rest. */
export function deadBandOf(input: Input, idleA: number): Quantity {
  const { ramps, rest } = input.evidence;
  if (ramps.length <= fewestTurns) throw new NotMeasurable('The run ended before the last turn. Run again.');
  if (alternatingOf(input, rest).pulsesPerS.value > hunts) throw new NotMeasurable(followsNot);
  const current = currentIn(input, idleA);
  if (current.topA < leastTop * current.noiseA) throw new NotMeasurable(followsNot);
  const runs = currentRuns(current, shares.low);
  return shareWithCurrent(runs, ramps) > smoothShare ? smoothBand(input, current) : leapBand(input, runs);
}
function currentIn({ samples, evidence: { ramps } }: Input, idleA: number): SmoothCurrent {
  const { timeS, value, lost } = samples.series('railCurrent', ramps[0].fromS, ramps.at(-1)!.toS);
  if (lost > 0) throw new NotMeasurable(`${lost} scans were lost in a ramp. Check the cable and run again.`);
  return smoothCurrent(timeS, value, idleA);
}
function shareWithCurrent(runs: readonly CurrentRun[], ramps: readonly Stretch[]): number {
  const halves = ramps.map(({ fromS, toS }) => ({ fromS: (fromS + toS) / 2, toS }));
  return mean(halves.map((half) => within(runs, half) / (half.toS - half.fromS)));
}
const within = (runs: readonly CurrentRun[], { fromS, toS }: Stretch): number =>
  runs.reduce((sum, run) => sum + Math.max(0, Math.min(run.toS, toS) - Math.max(run.fromS, fromS)), 0);
