// SPDX-License-Identifier: MIT
// Capacitance from the charge through the limited feed, v = V - (V - v0) exp(-t/RC): a straight line of ln(V - v) over
// time, below 4.2 V, where a controller that boots in spite of its switch draws nothing yet. V is the pack at rest
// less the diode of the feed. Pure.
import { feedOhm } from '#core/calibration/limited-feed';
import { combined, linear, uncertain, type Quantity } from '#core/measurements/quantity';
import { gainLines, rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, reading, tapOf } from '#core/measurements/tap-reading';
import { yorkFit } from '#core/measurements/york-fit';
import type { Series } from '#core/samples/sample-store';
import type { AnalysisInput } from '../check.ts';
import type { Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

type Input = AnalysisInput<Evidence>;
/** Below lies the lag of the tap's own filter, above the controller may boot. */
const fitFromV = 1.5;
const fitToV = 4.2;
/** A Schottky diode from 0.1 to 0.8 A; from memory, no source. */
const diode = { V: 0.3, halfWidth: 0.15 } as const;
/** Source, leads and the capacitor's own resistance beside the resistor of the feed; from memory, no source. */
const others = { ohm: 0.04, halfWidth: 0.04 } as const;
const fewestPoints = 4;

export interface Charged {
  readonly farad: Quantity;
  /** True where the charge was over between two samples: only an upper bound is known. */
  readonly atOnce: boolean;
}
export function chargedOf(input: Input, charge: Stretch, rest: Stretch): Charged {
  const series = input.samples.series('controllerVoltage', charge.fromS, charge.toS);
  if (series.lost > 0)
    throw new NotMeasurable(`${series.lost} scans of the charge were lost. Check the cable and run again.`);
  const ohm = pathOhm(input);
  const packV = reading(input, 'packVoltage', rest);
  const finalV = combined([packV, diodeQuantity()], (pack, drop) => pack - drop);
  if (pointsIn(series).length < fewestPoints)
    return { farad: bound(series, finalV.value, ohm.value), atOnce: true };
  return { farad: combined([timeConstant(input, series, finalV), ohm], (tau, r) => tau / r), atOnce: false };
}
const diodeQuantity = (): Quantity =>
  uncertain(diode.V, [
    [typeB('diode', 'diode of the limited feed', 'rule of thumb, from memory'), rectangular(diode.halfWidth)],
  ]);
function pathOhm({ rig }: Input): Quantity {
  const beside = typeB('path', 'resistance beside it', 'rule of thumb, from memory');
  return linear([
    [1, feedOhm(rig)],
    [1, uncertain(others.ohm, [[beside, rectangular(others.halfWidth)]])],
  ]);
}
interface Point {
  readonly atS: number;
  readonly volts: number;
}
/** The stretch of the first rise. */
function pointsIn({ timeS, value }: Series): Point[] {
  const all = Array.from(value, (volts, k) => ({ atS: timeS[k], volts }));
  const end = all.findIndex(({ volts }) => volts > fitToV);
  return all.slice(0, end < 0 ? all.length : end).filter(({ volts }) => volts > fitFromV);
}
/** Both taps' gains count: a tap that reads high bends the line. */
function timeConstant(input: Input, series: Series, finalV: Quantity): Quantity {
  const tap = tapOf(input.rig, 'controllerVoltage');
  const gain = uncertain(1, gainLines(input.rig, tap, 1, true));
  const { tauS, u, dof } = lineOf(series, finalV.value, 1, noiseV(input));
  const filterS = 1 / (2 * Math.PI * tap.cornerHz);
  const fitted = uncertain(0, [
    [typeA('fit', 'scatter about the charge curve', dof), u],
    [typeB('lag', "the tap's own filter at the start", 'computed'), rectangular(0.15 * filterS)],
  ]);
  return combined(
    [finalV, gain, fitted],
    (v, g, off) => lineOf(series, v, g, noiseV(input)).tauS + off || tauS,
  );
}
function noiseV({ rig, samples }: Input): number {
  const { error, scale } = tapOf(rig, 'controllerVoltage');
  const { volts } = samples.supply(0, samples.latestS);
  const perCode = scale.kind === 'linear' ? (scale.unitsPerV * volts) / 1024 : Number.NaN;
  return (Math.hypot(error.noiseLsb, error.inlLsb / Math.sqrt(3)) * perCode) / Math.SQRT2;
}
/** Weighted by how much a volt moves the logarithm, which makes it the least-squares fit of the curve itself. */
function lineOf(series: Series, finalV: number, gain: number, uV: number) {
  const points = pointsIn(series).map(({ atS, volts }) => {
    const leftV = finalV - volts / gain;
    return { x: atS, y: Math.log(leftV), ux: 0, uy: uV / leftV };
  });
  const fit = yorkFit(points);
  if (!fit) throw new NotMeasurable('The charge curve has too few points. Run again.');
  const tauS = -1 / fit.slope;
  const scatter = Math.max(1, Math.sqrt(fit.chi2 / fit.dof));
  return { tauS, u: fit.uSlope * scatter * tauS ** 2, dof: fit.dof };
}
/** From the last value below the fit to the first one above it at most so much was filled. */
function bound({ timeS, value }: Series, finalV: number, ohm: number): Quantity {
  const above = value.findIndex((volts) => volts > fitToV);
  const below = value.subarray(0, Math.max(0, above)).findLastIndex((volts) => volts < fitFromV);
  if (above < 0 || below < 0)
    throw new NotMeasurable('The controller side never rose above 4.2 V. See what the limited feed met.');
  const spanS = timeS[above] - timeS[below];
  const mostF = spanS / (ohm * Math.log((finalV - fitFromV) / (finalV - fitToV)));
  const words = 'the charge was over between two samples';
  return uncertain(mostF / 2, [[typeB('at once', words, 'computed'), rectangular(mostF / 2)]]);
}
