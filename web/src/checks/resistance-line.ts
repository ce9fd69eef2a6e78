// SPDX-License-Identifier: MIT
// A resistance as the slope of a voltage tap over a current tap: errors on both axes for each point, non-linearity
// over the span, and the gains of both taps on the whole. Pure.
import { combined, uncertain, type Quantity } from '#core/measurements/quantity';
import { gainLines, ownShare, rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { tapOf, type Bench } from '#core/measurements/tap-reading';
import type { LineFit, LinePoint } from '#core/measurements/york-fit';
import { stepOf } from '#core/samples/tap-scaling';

export interface Axes {
  readonly volts: string;
  readonly amps: string;
}
/** Ohm; the voltage falls as the current rises. */
export function resistanceOf(bench: Bench, axes: Axes, fit: LineFit, points: readonly LinePoint[]): Quantity {
  const gain = (id: string) => uncertain(1, gainLines(bench.rig, tapOf(bench.rig, id), 1, true));
  const parts = [slopeOf(bench, axes, fit, spanOf(points)), gain(axes.volts), gain(axes.amps)];
  return combined(parts, (r, v, i) => (r * v) / i);
}
const spanOf = (points: readonly LinePoint[]): number =>
  Math.max(...points.map(({ x }) => x)) - Math.min(...points.map(({ x }) => x));

/** Noise and scatter of the points. The codes of a small fall are neighbours and their non-linearity leans one way:
 *  it counts in full between the two ends of the line, however many points lie between. */
function slopeOf(bench: Bench, { volts, amps }: Axes, { slope, uSlope, chi2, dof }: LineFit, spanA: number) {
  const scatter = Math.max(1, Math.sqrt(chi2 / dof));
  const lean = (id: string) => ({
    ...typeB(`lean ${id}`, `converter non-linearity of ${id} over the span of the steps`, 'rig description'),
    shape: 'normal' as const,
  });
  return uncertain(-slope, [
    [typeA(`line ${volts}`, 'scatter of the load steps about the line', dof), uSlope * scatter],
    [lean(volts), endsOf(bench, volts) / spanA],
    [lean(amps), (Math.abs(slope) * endsOf(bench, amps)) / spanA],
  ]);
}
function endsOf({ rig, samples }: Bench, id: string): number {
  const tap = tapOf(rig, id);
  const { volts } = samples.supply(0, samples.latestS);
  return Math.SQRT2 * rectangular(ownShare * tap.error.inlLsb * stepOf(tap, volts));
}
