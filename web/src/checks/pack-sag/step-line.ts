// SPDX-License-Identifier: MIT
// Resistance from steps of the pack load: the slope of voltage over current with errors on both axes. What the open
// pack drifts between two steps is taken away in a straight line from free stretch to free stretch. Pure.
import type { Quantity } from '#core/measurements/quantity';
import { NotMeasurable, steadyOf } from '#core/measurements/tap-reading';
import { yorkFit, type LinePoint } from '#core/measurements/york-fit';
import type { AnalysisInput } from '../check.ts';
import { resistanceOf } from '../resistance-line.ts';
import type { Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

type Input = AnalysisInput<Evidence>;
const amps = 'packCurrentWide';

export function stepResistance(input: Input, volts: string): Quantity {
  const { free, loaded } = input.evidence;
  if (loaded.length < 2 || free.length !== loaded.length + 1)
    throw new NotMeasurable('Too few steps of the pack load were reached. Run again.');
  const points = loaded.flatMap((step, k) => pointsOf(input, volts, step, [free[k], free[k + 1]]));
  const fit = yorkFit(points);
  if (!fit)
    throw new NotMeasurable(
      'The steps of the pack load show no current. Check the pack load, then run again.',
    );
  return resistanceOf(input, { volts, amps }, fit, points);
}
/** The step less the open pack at its time, and the free stretch before it as the origin. */
function pointsOf(
  input: Input,
  volts: string,
  step: Stretch,
  [before, after]: [Stretch, Stretch],
): LinePoint[] {
  const at = (stretch: Stretch) => ({
    v: steadyOf(input, volts, stretch),
    i: steadyOf(input, amps, stretch),
  });
  const [open, loaded, later] = [at(before), at(step), at(after)];
  const along = (middle(step) - middle(before)) / (middle(after) - middle(before));
  const openV = open.v.mean + along * (later.v.mean - open.v.mean);
  const uOpen = Math.hypot((1 - along) * open.v.u, along * later.v.u);
  return [
    { x: open.i.mean, y: 0, ux: open.i.u, uy: uOpen },
    { x: loaded.i.mean, y: loaded.v.mean - openV, ux: loaded.i.u, uy: Math.hypot(loaded.v.u, uOpen) },
  ];
}
const middle = ({ fromS, toS }: Stretch): number => (fromS + toS) / 2;
