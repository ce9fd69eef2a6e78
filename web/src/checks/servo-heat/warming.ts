// SPDX-License-Identifier: MIT
// A servo's case while it works: the thermistor's line in bins, its first-order rise, and what that says of the case
// itself, of which a thermistor shows only a part and late. It knows no limits.
import { mean, sampleStandardDeviation } from 'simple-statistics';
import type { CurvePoint } from '#core/measurements/curve-fit';
import { combined, uncertain, type Quantity } from '#core/measurements/quantity';
import { rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, reading } from '#core/measurements/tap-reading';
import { forecast, horizon } from '#core/measurements/thermal-forecast';
import { thermalFit, type ThermalFit } from '#core/measurements/thermal-fit';
import type { AnalysisInput } from '../check.ts';
import type { Evidence } from './evidence.ts';

type Input = AnalysisInput<Evidence>;
const binS = 4;
/** Until then winding and thermistor are still on their way, and the rise is no single one (from the model). */
const settleS = 45;
const fewestBins = 12;
/** A thermistor on a case: share of the rise over the air that it shows, and how late (from memory). */
const shown = { low: 0.9, high: 0.94 };
const lag = { low: 8, high: 16 };
/** The winding's own heat makes the case's rise not quite a single one: share of the time constant (computed). */
const twoBodies = 0.08;
/** An unsure time constant is told as none. */
const mostDoubt = 0.35;
const leastRiseK = 2;

/** Thermistor against seconds of work. */
export function pointsOf({ samples, evidence: { working } }: Input): CurvePoint[] {
  const { timeS, value } = samples.series('thermistorServo', working.fromS, working.toS);
  const bins = new Map<number, number[]>();
  timeS.forEach((t, k) => {
    const bin = Math.floor((t - working.fromS) / binS);
    bins.set(bin, [...(bins.get(bin) ?? []), value[k]]);
  });
  return [...bins]
    .filter(([bin, values]) => bin * binS >= settleS && values.length > 3)
    .map(([bin, values]) => ({
      x: (bin + 0.5) * binS,
      y: mean(values),
      u: Math.max(0.01, sampleStandardDeviation(values) / Math.sqrt(values.length)),
    }));
}
export function riseOf(points: readonly CurvePoint[]): ThermalFit {
  if (points.length < fewestBins)
    throw new NotMeasurable(
      `Only ${points.length * binS} s of work were recorded beyond the first ${settleS} s. Run again, longer.`,
    );
  const roseK = points[points.length - 1].y - points[0].y;
  const fit = roseK < leastRiseK ? null : thermalFit(points, 1);
  if (fit) return fit;
  throw new NotMeasurable(
    `The case rose by only ${roseK.toFixed(1)} K: too little to tell how it goes on. Run longer.`,
  );
}
export function timeConstant(fit: ThermalFit): Quantity {
  const [tauS] = fit.tausS;
  const [u] = fit.uTausS;
  if (!(u < mostDoubt * tauS))
    throw new NotMeasurable(
      `In ${fit.runS.toFixed(0)} s the rise hardly bent, so its time constant may be anything. Run longer.`,
    );
  return uncertain(tauS, [
    [typeA('bend', 'bend of the rise', fit.dof), u],
    [typeB('two bodies', "the winding's own heat", 'computed'), rectangular(twoBodies * tauS)],
  ]);
}
/** The case after `atS` of such work. Throws NotMeasurable beyond three times the run. */
export function caseAt(input: Input, points: readonly CurvePoint[], atS: number): Quantity {
  const middleLagS = (lag.low + lag.high) / 2;
  const at = (s: number) => forecast(points, 1, s);
  const [early, middle, late] = [at(atS + lag.low), at(atS + middleLagS), at(atS + lag.high)];
  if (!early || !middle || !late) throw new NotMeasurable(tooFar(points, atS));
  const half = (middle.interval[1] - middle.interval[0]) / 2;
  const shownC = uncertain(middle.celsius, [
    [typeA('course', 'course of the rise beyond the run', 30), half / 2.04],
    [
      typeB('lag thermistorServo', 'lag of thermistorServo', 'from memory'),
      rectangular((late.celsius - early.celsius) / 2),
    ],
  ]);
  const air = reading(input, 'thermistorAmbient', input.evidence.working);
  return combined([shownC, air, contact()], (c, airC, share) => airC + (c - airC) / share);
}
const contact = (): Quantity =>
  uncertain((shown.low + shown.high) / 2, [
    [
      typeB('contact thermistorServo', 'contact of thermistorServo', 'from memory'),
      rectangular((shown.high - shown.low) / 2),
    ],
  ]);
function tooFar(points: readonly CurvePoint[], atS: number): string {
  const needS = Math.ceil((atS + lag.high) / horizon + settleS + binS);
  const ranS = points[points.length - 1].x;
  return `Nothing is claimed beyond ${horizon} times the ${ranS.toFixed(0)} s that the servo worked. For a race of ${(atS / 60).toFixed(0)} min let it work for ${needS} s.`;
}
