// SPDX-License-Identifier: MIT
// The edges of all three Hall lines while a hand turns the rotor slowly. The rig tells how many came on each line in
// every block, so a slow edge is known to within a block (7.5 ms). A line that comes twice within 40 ms is no hand's
// doing: that pair is taken out and counted. It knows lines and times, no limits.
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { SampleStore } from '#core/samples/sample-store';
import type { Stretch } from '../stretch.ts';

export type HallLine = 0 | 1 | 2;
export const lineNames = ['A', 'B', 'C'] as const;
export interface HallStep {
  readonly line: HallLine;
  /** Middle of the block in which it came. */
  readonly timeS: number;
  /** The line's edges counted before this one, since the run began: odd and even are its two levels. */
  readonly before: number;
}
export interface HallSteps {
  readonly steps: readonly HallStep[];
  /** Pairs of edges on one line, closer than a hand can turn. */
  readonly pairs: number;
  /** How often the three lines were all alike. */
  readonly invalid: number;
  /** All edges, the pairs among them. */
  readonly edges: number;
  /** Edges a second of the second busiest line: what the hand does, as one line alone may be noisy. */
  readonly perS: number;
}
/** A hand's tremor is slower (from memory). */
const pairWithinS = 0.04;
const lines = [0, 1, 2] as const;

/** Throws NotMeasurable when blocks were lost, as counts then don't tell the order. */
export function steps(samples: SampleStore, stretch: Stretch): HallSteps {
  const found = stepsIfWhole(samples, stretch);
  if (found) return found;
  throw new NotMeasurable('Blocks were lost while the rotor was turned. Check the cable and run again.');
}
/** Null when blocks were lost. */
export function stepsIfWhole(samples: SampleStore, { fromS, toS }: Stretch): HallSteps | null {
  if (samples.gaps.some((gap) => gap.toS > fromS && gap.fromS < toS)) return null;
  const told = samples.status(fromS, toS);
  const counts = [told.edgesA, told.edgesB, told.edgesC];
  const found: HallStep[] = [];
  let pairs = 0;
  for (let block = 1; block < told.timeS.length; block++) {
    const middleS = (told.timeS[block] + (told.timeS[block + 1] ?? told.timeS[block])) / 2;
    for (const line of lines) {
      const came = counts[line][block] - counts[line][block - 1];
      pairs += came >> 1;
      if (came % 2 === 1) found.push({ line, timeS: middleS, before: counts[line][block - 1] });
    }
  }
  const cleaned = withoutPairs(found);
  const end = told.timeS.length - 1;
  const grown = (counted: Float64Array) => (end > 0 ? counted[end] - counted[0] : 0);
  const edges = counts.map(grown);
  return {
    steps: cleaned.steps,
    pairs: pairs + cleaned.pairs,
    invalid: grown(told.badHall),
    edges: edges[0] + edges[1] + edges[2],
    perS: edges.toSorted((a, b) => b - a)[1] / (toS - fromS),
  };
}
/** A pair need not be neighbours: the line beside it may come in between. */
function withoutPairs(found: readonly HallStep[]): { steps: HallStep[]; pairs: number } {
  const kept: HallStep[] = [];
  let pairs = 0;
  for (const step of found) {
    const before = kept.findLastIndex(
      ({ line, timeS }) => line === step.line && step.timeS - timeS < pairWithinS,
    );
    if (before < 0) kept.push(step);
    else {
      kept.splice(before, 1);
      pairs++;
    }
  }
  return { steps: kept, pairs };
}
export interface Order {
  /** From one line to the next as the motor runs: A, C, B, and so on. */
  readonly inOrder: number;
  readonly against: number;
  /** Two lines in one block: turned too fast to tell which was first. */
  readonly together: number;
}
/** Edges of lines 120 degrees apart follow one another as A, C, B while the running direction makes them rise A, B, C. */
export function orderOf({ steps: all }: HallSteps): Order {
  const order = { inOrder: 0, against: 0, together: 0 };
  for (let k = 1; k < all.length; k++) {
    const way = (all[k].line - all[k - 1].line + 3) % 3;
    if (way === 0) continue;
    if (all[k].timeS === all[k - 1].timeS) order.together++;
    else if (way === 2) order.inOrder++;
    else order.against++;
  }
  return order;
}
/** Share of each electrical turn that a line spends on the side where its count is even. */
export function evenShares({ steps: all }: HallSteps, line: HallLine): number[] {
  const own = all.filter((step) => step.line === line);
  return own.slice(2).flatMap((end, k) => {
    const [start, middle] = [own[k], own[k + 1]];
    const isWhole = start.before % 2 !== middle.before % 2 && start.before % 2 === end.before % 2;
    const share = (middle.timeS - start.timeS) / (end.timeS - start.timeS);
    return isWhole ? [start.before % 2 === 1 ? share : 1 - share] : [];
  });
}
