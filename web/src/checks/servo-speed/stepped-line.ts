// SPDX-License-Identifier: MIT
// The straight line through durations that come in steps: a servo that looks at its pulse once a frame ends each move
// at the next look, up to one step late. About the line they are spread evenly over one step, and what is known of the
// line is what leaves each of them inside: all slopes and intercepts have their say. Numbers only.
import { linearRegression } from 'simple-statistics';

export interface Line {
  readonly slope: number;
  /** Standard uncertainty of the slope. */
  readonly uSlope: number;
  readonly intercept: number;
}
/** Scatter of a move beside its step, as a share of the step; from memory. */
const blur = 0.06;
/** How far about the least-squares line is looked: share of the slope, steps. */
const reach = { slope: 0.15, intercept: 1.5 } as const;
const half = { slope: 60, intercept: 30 } as const;

/** Durations against lengths, step in the unit of the durations. */
export function steppedLine(points: readonly (readonly [number, number])[], step: number): Line {
  const { m, b } = linearRegression(points.map(([x, y]) => [x, y]));
  const middle = points.reduce((sum, [x]) => sum + x, 0) / points.length;
  const heightThere = b + m * middle;
  let [weight, slopes, squares, heights] = [0, 0, 0, 0];
  for (let i = -half.slope; i <= half.slope; i++)
    for (let k = -half.intercept; k <= half.intercept; k++) {
      const slope = m * (1 + (reach.slope * i) / half.slope);
      const height = heightThere + (reach.intercept * step * k) / half.intercept;
      const likely = likelihood(points, { slope, height, middle }, step);
      weight += likely;
      slopes += likely * slope;
      squares += likely * slope * slope;
      heights += likely * height;
    }
  const slope = slopes / weight;
  return {
    slope,
    uSlope: Math.sqrt(Math.max(0, squares / weight - slope * slope)),
    intercept: heights / weight - slope * middle,
  };
}
interface Tried {
  readonly slope: number;
  /** Of the line at `middle`. */
  readonly height: number;
  readonly middle: number;
}
function likelihood(points: readonly (readonly [number, number])[], at: Tried, step: number): number {
  const sum = points.reduce((all, [x, y]) => {
    const off = Math.abs(y - at.height - at.slope * (x - at.middle)) / step;
    return all + Math.log(withinStep(off) + 1e-4);
  }, 0);
  return Math.exp(sum);
}
/** Even within half a step, and a blurred edge. */
const withinStep = (off: number): number => 1 / (1 + Math.exp((off - 0.5) / (blur / 1.7)));
