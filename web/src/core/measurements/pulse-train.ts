// SPDX-License-Identifier: MIT
// From the times of edges on a servo signal line to pulses: a short distance between two edges is a pulse, a long one
// the rest of the frame. It knows no level and no channel; pulses longer than 2.6 ms or shorter than 0.5 ms are none
// (servo pulses are 0.8 to 2.2 ms: common practice, no source).

export interface Pulse {
  /** When it began. */
  readonly atS: number;
  readonly widthS: number;
}
const shortestS = 0.5e-3;
const longestS = 2.6e-3;
/** Frames of servo signals are 3 to 25 ms; longer means that pulses were missed. */
const longestFrameS = 0.03;

export function pulsesIn(edges: ArrayLike<number>): Pulse[] {
  const pulses: Pulse[] = [];
  for (let i = 0; i + 1 < edges.length; i++) {
    const widthS = edges[i + 1] - edges[i];
    if (widthS < shortestS || widthS > longestS) continue;
    pulses.push({ atS: edges[i], widthS });
    i++;
  }
  return pulses;
}
/** Distances between the beginnings of neighbouring pulses, s. */
export const framesOf = (pulses: readonly Pulse[]): number[] =>
  pulses
    .slice(1)
    .map(({ atS }, i) => atS - pulses[i].atS)
    .filter((frameS) => frameS <= longestFrameS);
