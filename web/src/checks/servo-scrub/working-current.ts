// SPDX-License-Identifier: MIT
// One move as a line of current: greatest mean over 2 ms, what it works with once under way, what it rests with, and
// how long it works. Numbers only.
import { named } from '#core/titles/check-titles';
import { median } from 'simple-statistics';
import { NotMeasurable } from '#core/measurements/tap-reading';

export interface Worked {
  readonly peakA: number;
  /** Median from 25 to 70 ms after the rise, when the inrush is over and the lock not reached yet. */
  readonly workA: number;
  /** Median of the last 50 ms. */
  readonly restA: number;
  /** From the rise until the current is for the last time above the middle of both. */
  readonly workS: number;
}
export const spans = { peakS: 0.002, workFromS: 0.025, workToS: 0.07, restS: 0.05 } as const;
/** The rise counts from this share of the peak. */
const riseShare = 0.3;
/** Below this the move is not told from the rest. */
const leastStepA = 0.05;

/** Throws NotMeasurable where nothing moved or it never came to rest. */
export function worked(amps: ArrayLike<number>, intervalS: number): Worked {
  const smooth = means(amps, Math.round(spans.peakS / intervalS));
  const peakA = Math.max(...smooth);
  const rise = smooth.findIndex((i) => i > riseShare * peakA);
  const at = (s: number) => rise + Math.round(s / intervalS);
  const line = smooth.slice();
  const workA = median(line.slice(at(spans.workFromS), at(spans.workToS)));
  const restA = median(line.slice(-Math.round(spans.restS / intervalS)));
  if (workA - restA < leastStepA)
    throw new NotMeasurable(
      `The servo drew ${workA.toFixed(2)} A under way and ${restA.toFixed(2)} A at lock: it never came to rest, or it never moved. Run ${named('servo-end-points')}, then run again.`,
    );
  const last = smooth.findLastIndex((i) => i > (workA + restA) / 2);
  return { peakA, workA, restA, workS: (last - rise) * intervalS };
}
/** Moving mean over `over` values. */
function means(values: ArrayLike<number>, over: number): number[] {
  const found: number[] = [];
  let sum = 0;
  for (let k = 0; k < values.length; k++) {
    sum += values[k] - (k >= over ? values[k - over] : 0);
    if (k >= over - 1) found.push(sum / over);
  }
  return found;
}
