// SPDX-License-Identifier: MIT
// The mean of a tap over a stretch as it would be without a calibration, with what that one point may be off by for
// itself: noise, noise of the reference readings, non-linearity at its code. It commands nothing.
import { gainLines, linearityLines, pinShare } from '#core/measurements/tap-errors';
import { steadyOf, tapOf, type Bench, type Stretch } from '#core/measurements/tap-reading';
import { codeAt, tapScaling } from '#core/samples/tap-scaling';
import type { RigDescription, Tap } from '#core/samples/rig-description';

export interface TapMean {
  readonly shown: number;
  readonly u: number;
}

/** Throws NotMeasurable when scans were lost or the tap is at its end. */
export function tapMean(bench: Bench, id: string, stretch: Stretch): TapMean {
  const tap = tapOf(bench.rig, id);
  const found = steadyOf(bench, id, stretch);
  const scaling = tapScaling(bench.rig, id);
  const { gain, offset } = scaling ?? { gain: 1, offset: 0 };
  const shown = (found.mean - offset) / gain;
  return { shown, u: Math.hypot(found.u / gain, ownU(bench, tap, shown, stretch)) };
}
function ownU({ rig, samples }: Bench, tap: Tap, shown: number, { fromS, toS }: Stretch): number {
  const { volts, u } = samples.supply(fromS, toS);
  const share = pinShare(tap, shown, false);
  const lines = linearityLines(rig, tap, { code: codeAt(tap, shown, volts), share, supplyV: volts });
  return Math.hypot((share * u) / volts, ...lines.map(([, line]) => line));
}
/** Standard uncertainty of a tap's gain as it counts, relative. */
export const relativeGainU = (rig: RigDescription, id: string): number =>
  Math.hypot(...gainLines(rig, tapOf(rig, id), 1, true).map(([, u]) => u));
