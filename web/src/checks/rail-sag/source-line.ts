// SPDX-License-Identifier: MIT
// Source resistance: the slope of rail voltage over rail current through all load combinations, with errors on
// both axes (scatter and non-linearity of each point), and the gain errors of both taps on the slope.
import { mean } from 'simple-statistics';
import { combined, uncertain, type Quantity } from '#core/measurements/quantity';
import { measured, type ResultName } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import type { SteadyMean } from '#core/measurements/steady-mean';
import { gainLines, ownShare, rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, steadyOf, tapOf } from '#core/measurements/tap-reading';
import { yorkFit, type LineFit, type LinePoint } from '#core/measurements/york-fit';
import { stepOf } from '#core/samples/tap-scaling';
import type { AnalysisInput } from '../check.ts';
import type { Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

type Input = AnalysisInput<Evidence>;
/** A rail that falls by more than this is no source with a resistance any more: the regulator gave up. */
const collapsedShare = 0.25;

export function sourceOf(name: ResultName, input: Input): Finding {
  const points = levelsOf(input).map((level) => levelPoint(input, level));
  const restV = Math.max(...points.map((point) => point.y));
  const held = points.filter((point) => point.y > (1 - collapsedShare) * restV);
  if (held.length < points.length) throw new NotMeasurable(collapseWords(held));
  const fit = yorkFit(points);
  if (!fit) throw new NotMeasurable('Too few load steps were recorded to draw a line. Run again.');
  return measured(name, withGains(input, slopeOf(fit)), {
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
/** Mean over the passes, with what it may be off by for itself: noise, and non-linearity of its codes' own. */
function levelPoint(input: Input, stretches: readonly Stretch[]): LinePoint {
  const volts = stretches.map((stretch) => steadyOf(input, 'railVoltage', stretch));
  const amps = stretches.map((stretch) => steadyOf(input, 'railCurrent', stretch));
  const noise = (of: readonly SteadyMean[]) => Math.hypot(...of.map(({ u }) => u)) / of.length;
  return {
    x: mean(amps.map((one) => one.mean)),
    y: mean(volts.map((one) => one.mean)),
    ux: Math.hypot(noise(amps), ownLinearity(input, 'railCurrent')),
    uy: Math.hypot(noise(volts), ownLinearity(input, 'railVoltage')),
  };
}
function ownLinearity({ rig, samples }: Input, id: string): number {
  const tap = tapOf(rig, id);
  const { volts } = samples.supply(0, samples.latestS);
  return rectangular(ownShare * tap.error.inlLsb * stepOf(tap, volts));
}
/** The points' own errors, and what they scatter beyond them. */
function slopeOf({ slope, uSlope, chi2, dof }: LineFit): Quantity {
  const own = typeB('line', 'noise and non-linearity of the points of the line', 'rig description');
  const beyond = Math.sqrt(Math.max(0, chi2 / dof - 1));
  return uncertain(-slope, [
    [{ ...own, shape: 'normal' }, uSlope],
    [typeA('scatter', 'scatter of the load steps about the line', dof), uSlope * beyond],
  ]);
}
/** Relative gain errors act on the slope in full. */
function withGains(input: Input, slope: Quantity): Quantity {
  const gain = (id: string) => uncertain(1, gainLines(input.rig, tapOf(input.rig, id), 1, true));
  return combined([slope, gain('railVoltage'), gain('railCurrent')], (r, v, i) => (r * v) / i);
}
function collapseWords(held: readonly LinePoint[]): string {
  const mostA = Math.max(...held.map((point) => point.x));
  return `The rail collapsed at loads above ${mostA.toFixed(1)} A, so it has no resistance to speak of: its regulator limits the current. See the steady drop and the dip.`;
}
