// SPDX-License-Identifier: MIT
// Source resistance: the slope of rail voltage over rail current through all load combinations, with errors on
// both axes (scatter and non-linearity of each point), and the gain errors of both taps on the slope.
import { mean } from 'simple-statistics';
import { measured, type ResultName } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import type { SteadyMean } from '#core/measurements/steady-mean';
import { NotMeasurable, steadyOf } from '#core/measurements/tap-reading';
import { yorkFit, type LinePoint } from '#core/measurements/york-fit';
import type { AnalysisInput } from '../check.ts';
import { resistanceOf } from '../resistance-line.ts';
import type { Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

type Input = AnalysisInput<Evidence>;
const axes = { volts: 'railVoltage', amps: 'railCurrent' } as const;
/** A rail that falls by more than this is no source with a resistance any more: the regulator gave up. */
const collapsedShare = 0.25;

export function sourceOf(name: ResultName, input: Input): Finding {
  const points = levelsOf(input).map((level) => levelPoint(input, level));
  const restV = Math.max(...points.map((point) => point.y));
  const held = points.filter((point) => point.y > (1 - collapsedShare) * restV);
  if (held.length < points.length) throw new NotMeasurable(collapseWords(held));
  const fit = yorkFit(points);
  if (!fit) throw new NotMeasurable('Too few load steps were recorded to draw a line. Run again.');
  return measured(name, resistanceOf(input, axes, fit, points), {
    formula: 'Slope of rail voltage over rail current through all load combinations, errors on both axes.',
    evidence: input.evidence.steps.map(({ loaded }) => ({ ...loaded, taps: ['railVoltage', 'railCurrent'] })),
  });
}
/** Stretches by load: passes over one load meet the same codes, so they are one point of the line. */
function levelsOf({ evidence }: Input): Stretch[][] {
  const byMask = new Map<number, Stretch[]>([[0, evidence.steps.map(({ free }) => free)]]);
  for (const { mask, loaded } of evidence.steps) byMask.set(mask, [...(byMask.get(mask) ?? []), loaded]);
  return [...byMask.values()];
}
/** Mean over the passes, with its noise. */
function levelPoint(input: Input, stretches: readonly Stretch[]): LinePoint {
  const volts = stretches.map((stretch) => steadyOf(input, 'railVoltage', stretch));
  const amps = stretches.map((stretch) => steadyOf(input, 'railCurrent', stretch));
  const noise = (of: readonly SteadyMean[]) => Math.hypot(...of.map(({ u }) => u)) / of.length;
  const middle = (of: readonly SteadyMean[]) => mean(of.map((one) => one.mean));
  return { x: middle(amps), y: middle(volts), ux: noise(amps), uy: noise(volts) };
}
function collapseWords(held: readonly LinePoint[]): string {
  const mostA = Math.max(...held.map((point) => point.x));
  return `The rail collapsed at loads above ${mostA.toFixed(1)} A, so it has no resistance to speak of: its regulator limits the current. See the steady drop and the dip.`;
}
