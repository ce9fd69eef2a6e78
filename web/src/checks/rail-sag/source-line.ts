// SPDX-License-Identifier: MIT
// Source resistance: the slope of rail voltage over rail current through all load combinations, with errors on
// both axes (scatter and non-linearity of each point), and the gain errors of both taps on the slope.
import { combined, uncertain, widened, type Quantity } from '#core/measurements/quantity';
import { measured, type ResultName } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { gainLines, rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, steadyOf, tapOf } from '#core/measurements/tap-reading';
import { yorkFit, type LinePoint } from '#core/measurements/york-fit';
import { stepOf } from '#core/samples/tap-scaling';
import type { AnalysisInput } from '../check.ts';
import type { Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

type Input = AnalysisInput<Evidence>;
/** A rail that falls by more than this is no source with a resistance any more: the regulator gave up. */
const collapsedShare = 0.25;

export function sourceOf(name: ResultName, input: Input): Finding {
  const points = input.evidence.steps.flatMap(({ loaded, free }) => [
    pointOf(input, free),
    pointOf(input, loaded),
  ]);
  const restV = Math.max(...points.map((point) => point.y));
  const linear = points.filter((point) => point.y > (1 - collapsedShare) * restV);
  if (linear.length < points.length) throw new NotMeasurable(collapseWords(points, restV));
  const fit = yorkFit(linear);
  if (!fit) throw new NotMeasurable('Too few load steps were recorded to draw a line. Run again.');
  const scatter = Math.max(1, Math.sqrt(fit.chi2 / fit.dof));
  const fitted = uncertain(-fit.slope, [
    [typeA('line', 'scatter of the load steps about the line', fit.dof), fit.uSlope * scatter],
  ]);
  return measured(name, withGains(input, fitted), {
    formula: 'Slope of rail voltage over rail current through all load combinations, errors on both axes.',
    evidence: input.evidence.steps.map(({ loaded }) => ({ ...loaded, taps: ['railVoltage', 'railCurrent'] })),
  });
}
/** What one point may be off by for itself: noise, and non-linearity at its own codes. */
function pointOf(input: Input, stretch: Stretch): LinePoint {
  const volts = steadyOf(input, 'railVoltage', stretch);
  const amps = steadyOf(input, 'railCurrent', stretch);
  return {
    x: amps.mean,
    y: volts.mean,
    ux: Math.hypot(amps.u, ownLinearity(input, 'railCurrent')),
    uy: Math.hypot(volts.u, ownLinearity(input, 'railVoltage')),
  };
}
function ownLinearity({ rig, samples }: Input, id: string): number {
  const tap = tapOf(rig, id);
  const { volts } = samples.supply(0, samples.latestS);
  return rectangular(tap.error.inlLsb * stepOf(tap, volts)) / 2;
}
/** Relative gain errors act on the slope in full. Non-linearity common to neighbouring codes is one line more. */
function withGains(input: Input, slope: Quantity): Quantity {
  const gain = (id: string) => uncertain(1, gainLines(input.rig, tapOf(input.rig, id), 1, true));
  const scaled = combined([slope, gain('railVoltage'), gain('railCurrent')], (r, v, i) => (r * v) / i);
  const bow = typeB('bow', 'converter non-linearity over the span of the steps', 'rig description');
  const tap = tapOf(input.rig, 'railVoltage');
  const span = spanA(input);
  const { volts } = input.samples.supply(0, input.samples.latestS);
  return widened(scaled, bow, rectangular((0.5 * tap.error.inlLsb * stepOf(tap, volts)) / span));
}
function spanA(input: Input): number {
  const amps = input.evidence.steps.map(({ loaded }) => steadyOf(input, 'railCurrent', loaded).mean);
  return Math.max(...amps);
}
function collapseWords(points: readonly LinePoint[], restV: number): string {
  const held = points.filter((point) => point.y > (1 - collapsedShare) * restV);
  const mostA = Math.max(...held.map((point) => point.x));
  return `The rail collapsed at loads above ${mostA.toFixed(1)} A, so it has no resistance to speak of: its regulator limits the current. See the steady drop and the dip.`;
}
