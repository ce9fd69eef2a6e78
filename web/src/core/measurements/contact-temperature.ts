// SPDX-License-Identifier: MIT
// The temperature of what a thermistor lies against: it shows only a part of the rise over the air, and shows it late.
// Both are put right as far as they are known. It knows taps, no part and no check.
import { linearRegression } from 'simple-statistics';
import { combined, uncertain, type Quantity } from './quantity.ts';
import { rectangular, typeA, typeB } from './tap-errors.ts';
import { NotMeasurable, reading, tapOf, type Bench, type Stretch } from './tap-reading.ts';

/** 3 to 5 K low on a body of 75 C in air of 25 C: 0.90 to 0.94 of the rise is shown (from memory). */
export const shownShare = { low: 0.9, high: 0.94 };
/** Taped or clamped on a can or a case, first order (from memory). */
export const lagS = { low: 8, high: 16 };
const memory = 'from memory';

/** C of the body, mean over the stretch; `airId` is the thermistor in the air beside it. Throws NotMeasurable. */
export function contactTemperature(bench: Bench, id: string, airId: string, stretch: Stretch): Quantity {
  requireRead(bench, id, stretch);
  requireRead(bench, airId, stretch);
  const [shown, air] = [id, airId].map((tap) => reading(bench, tap, stretch));
  const share = between(shownShare, `contact ${id}`, `contact of ${id}`);
  const lag = between(lagS, `lag ${id}`, `lag of ${id}`);
  return combined([shown, risingOf(bench, id, stretch), lag, air, share], bodyC);
}
/** First order, held back by a share: shown' = (air + share (body - air) - shown)/lag. */
export const bodyC = (shownC: number, perS: number, lag: number, airC: number, share: number): number =>
  airC + (shownC + lag * perS - airC) / share;

function requireRead(bench: Bench, id: string, { fromS, toS }: Stretch): void {
  tapOf(bench.rig, id);
  const { value, clipped } = bench.samples.series(id, fromS, toS);
  if (value.length + clipped > 0) return;
  throw new NotMeasurable(`The thermistor "${id}" was not read. Scan the multiplexer and run again.`);
}
const between = ({ low, high }: { low: number; high: number }, id: string, words: string): Quantity =>
  uncertain((low + high) / 2, [[typeB(id, words, memory), rectangular((high - low) / 2)]]);

/** K a second: straight line through the stretch. */
function risingOf({ samples }: Bench, id: string, { fromS, toS }: Stretch): Quantity {
  const { timeS, value } = samples.series(id, fromS, toS);
  const { m, b } = linearRegression(Array.from(timeS, (t, i) => [t, value[i]]));
  const middleS = timeS.reduce((sum, t) => sum + t, 0) / timeS.length;
  const spread = timeS.reduce((sum, t) => sum + (t - middleS) ** 2, 0);
  const left = value.reduce((sum, v, i) => sum + (v - b - m * timeS[i]) ** 2, 0);
  const dof = Math.max(1, timeS.length - 2);
  return uncertain(m, [
    [
      typeA(`rising ${id} ${fromS.toFixed(4)}`, `rise of ${id} while it was read`, dof),
      Math.sqrt(left / dof / spread),
    ],
  ]);
}
