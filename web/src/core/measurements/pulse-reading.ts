// SPDX-License-Identifier: MIT
// The pulses that the capture input saw over a stretch as quantities with their budget: width, spread of the width,
// frames a second; or the sentence why there are none. Widths in us. It knows no channel's meaning.
import { mean, sampleStandardDeviation } from 'simple-statistics';
import type { SampleStore } from '../samples/sample-store.ts';
import { framesOf, pulsesIn, type Pulse } from './pulse-train.ts';
import { uncertain, type Quantity } from './quantity.ts';
import { clockLine, rectangular, typeA, typeB } from './tap-errors.ts';
import { NotMeasurable, type Stretch } from './tap-reading.ts';

const us = 1e6;
/** Both edges are stamped in ticks of this length. */
const tickUs = 0.5;
const fewest = 8;

/** Pulses of a stretch without a gap. */
export function pulsesOf(samples: SampleStore, { fromS, toS }: Stretch): Pulse[] {
  const when = `between ${fromS.toFixed(2)} s and ${toS.toFixed(2)} s`;
  if (samples.gaps.some((gap) => gap.toS > fromS && gap.fromS < toS))
    throw new NotMeasurable(`Blocks were lost ${when}. Check the cable and run again.`);
  return pulsesIn(samples.edges(fromS, toS));
}
/** Mean width, us. Throws NotMeasurable with fewer than eight pulses. */
export function widthOf(samples: SampleStore, stretch: Stretch): Quantity {
  const widths = widthsUs(samples, stretch);
  const value = mean(widths) * samples.clock.ratio;
  const noise = sampleStandardDeviation(widths) / Math.sqrt(widths.length);
  return uncertain(value, [
    clockLine(samples.clock, value),
    [typeB(`stamps ${key(stretch)}`, 'rounding of the two time stamps', 'computed'), rectangular(tickUs / 2)],
    [typeA(`widths ${key(stretch)}`, 'spread of the pulses', widths.length - 1), noise],
  ]);
}
/** Standard deviation of one pulse's width, us, over several stretches of a width each; rounding of the stamps taken out. */
export function jitterOf(samples: SampleStore, stretches: readonly Stretch[]): Quantity {
  const all = stretches.map((stretch) => widthsUs(samples, stretch));
  const dof = all.reduce((sum, widths) => sum + widths.length - 1, 0);
  const squares = all.reduce(
    (sum, widths) => sum + (widths.length - 1) * sampleStandardDeviation(widths) ** 2,
    0,
  );
  // Each of two stamps is rounded down to a tick: variance tick^2/12 (JCGM 100:2008, 4.3.7).
  const jitter = Math.sqrt(Math.max(0, squares / dof - tickUs ** 2 / 6));
  const spread = Math.sqrt(squares / dof);
  return uncertain(jitter, [
    // u(s) = s/sqrt(2 dof): JCGM 100:2008, E.4.3, note.
    [typeA(`jitter ${key(stretches[0])}`, 'few pulses', dof), spread / Math.sqrt(2 * dof)],
    [typeB(`jitter stamps`, 'rounding of the time stamps', 'computed'), rectangular(tickUs / 10)],
  ]);
}
/** Frames a second. */
export function framesPerS(samples: SampleStore, stretch: Stretch): Quantity {
  const frames = framesOf(pulsesOf(samples, stretch));
  if (frames.length < fewest) throw tooFew(frames.length, stretch);
  const value = 1 / (mean(frames) * samples.clock.ratio);
  const noise = sampleStandardDeviation(frames) / mean(frames) / Math.sqrt(frames.length);
  return uncertain(value, [
    clockLine(samples.clock, value),
    [typeA(`frames ${key(stretch)}`, 'spread of the frames', frames.length - 1), value * noise],
    [typeB(`stamps ${key(stretch)}`, 'rounding of the time stamps', 'computed'), value * stampShare(stretch)],
  ]);
}
const stampShare = ({ fromS, toS }: Stretch): number => rectangular((2 * tickUs) / us / (toS - fromS));
const key = ({ fromS }: Stretch): string => fromS.toFixed(4);

function widthsUs(samples: SampleStore, stretch: Stretch): number[] {
  const pulses = pulsesOf(samples, stretch);
  if (pulses.length < fewest) throw tooFew(pulses.length, stretch);
  return pulses.map(({ widthS }) => widthS * us);
}
const tooFew = (count: number, { fromS, toS }: Stretch): NotMeasurable =>
  new NotMeasurable(
    `Only ${count} servo pulses came between ${fromS.toFixed(2)} s and ${toS.toFixed(2)} s, at least ${fewest} are needed. Check the Y-leads, the receiver's power and the transmitter, then run again.`,
  );
