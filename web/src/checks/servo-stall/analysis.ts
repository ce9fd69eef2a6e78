// SPDX-License-Identifier: MIT
// servo-stall: from the last push to the current at the moment of stall and at rated voltage. Pure.
// While the horn can't move, the servo is a resistance that warms: R(t) = V(t)/I(t) = R0 (1 + k t). A straight
// line through 60 to 240 ms, inrush left out, gives R0 at the moment of stall; stall current = rated V / R0.
import { linearRegression } from 'simple-statistics';
import { combined, uncertain, type Quantity } from '#core/measurements/quantity';
import { guarded, measured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, reading, trimmedReading, zeroOf } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import type { Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';
import { partMeans, seriesOf, type StallSeries } from './stall-series.ts';

export const results = [{ id: 'stall-current', title: 'Stall current at rated voltage', unit: 'A' }] as const;
/** Inrush is over this long after the current rose (from memory and the model's 60 ms). */
const inrushS = 0.06;
/** Less than this against the idle current and nothing pushed. */
const leastStallA = 0.5;
/** A winding of 0.7 J/K at 32 W loses 3 % of its current in 180 ms (computed); more than twice that is no warming. */
const steadyShare = 0.93;
const stillGrowingShare = 1.08;
/** The rail adapter's shunt lies between the rail tap and the servo's plug. */
const shuntOhm = 0.01;
/** What the servo's own electronics take besides its motor (from memory). */
const electronicsA = { low: 0, high: 0.03 };
type Input = AnalysisInput<Evidence>;

export function analyse(input: Input): readonly Finding[] {
  return guarded(results, () => {
    const pushes = input.evidence.pushes.map(({ degrees, stretch }) => ({
      degrees,
      series: seriesOf(input.samples, stretch),
    }));
    const wide = pushes.filter(({ degrees }) => degrees >= 10);
    if (wide.length < 2) throw new NotMeasurable('The run ended before the last push. Run again.');
    const [before, last] = wide.slice(-2).map(({ series }) => series);
    requireStall(last);
    for (const { degrees, series } of wide) requireSteady(degrees, series);
    requireFullyOn(before, last);
    return [stallAt(input, last)];
  });
}
function requireStall(series: StallSeries): void {
  if (series.peakA < leastStallA)
    throw new NotMeasurable(
      `Only ${series.peakA.toFixed(2)} A flowed at the widest push: the horn was not against the block, or the servo is dead. Set the block, then run again.`,
    );
}
function requireSteady(degrees: number, series: StallSeries): void {
  const parts = partMeans(series, inrushS, 0.02);
  if (parts.length < 4) throw new NotMeasurable('Too little of a push was recorded. Run again.');
  const end = parts[parts.length - 1];
  if (end >= steadyShare * Math.max(...parts)) return;
  throw new NotMeasurable(
    `At ${degrees} degrees the current fell from ${Math.max(...parts).toFixed(2)} A to ${end.toFixed(2)} A within one push: the block gave way, or the servo limits its current. Fix the block firmly and run again.`,
  );
}
/** With the bridge fully on, a wider command brings no more current. */
function requireFullyOn(before: StallSeries, last: StallSeries): void {
  const [was, is] = [before, last].map((series) => mean(partMeans(series, inrushS, 0.02)));
  if (is > stillGrowingShare * was)
    throw new NotMeasurable(
      `The current still grew from ${was.toFixed(2)} A to ${is.toFixed(2)} A at the widest push: the block gave way, or its degrees per microsecond are entered too small. Look at both, then run again.`,
    );
  if (was > stillGrowingShare * is)
    throw new NotMeasurable(
      `The widest push drew less (${is.toFixed(2)} A) than the one before (${was.toFixed(2)} A): the block gave way or the servo limits itself. Fix the block, let the servo cool, then run again.`,
    );
}
const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

function stallAt(input: Input, series: StallSeries): Finding {
  const stretch = { fromS: series.onsetS + inrushS, toS: series.endS };
  const { ratedVoltageV } = input.car.servo;
  const ohm = resistanceAt(input, stretch);
  const back = backToOnset(series, stretch);
  const current = combined([ohm, back], (r, ratio) => (ratedVoltageV * ratio) / r);
  return measured(results[0], current, {
    formula: `${ratedVoltageV} V over the servo's resistance (voltage at its plug over current), the resistance taken back along a straight line from ${(inrushS * 1e3).toFixed(0)} ms and later to the moment of stall.`,
    evidence: [{ ...stretch, taps: ['railVoltage', 'railCurrent'] }],
    notes: [
      `Mean current of the push ${series.meanA(stretch).toFixed(2)} A; it changed by ${((1 - back.value) * -100).toFixed(1)} % from the moment of stall to the middle of the stretch.`,
    ],
  });
}
/** Mean resistance over the stretch, with everything the taps may be wrong by. */
function resistanceAt(input: Input, stretch: Stretch): Quantity {
  const volts = reading(input, 'railVoltage', stretch);
  const amps = trimmedReading(input, 'railCurrent', stretch, zeroOf(input, 'railCurrent'));
  return combined([volts, amps, shunt(), electronics()], (v, i, r, other) => (v - r * i) / (i - other));
}
const electronics = (): Quantity =>
  uncertain((electronicsA.low + electronicsA.high) / 2, [
    [
      typeB('electronics', "what the servo's electronics take", 'from memory'),
      rectangular((electronicsA.high - electronicsA.low) / 2),
    ],
  ]);
const shunt = (): Quantity =>
  uncertain(shuntOhm, [
    [typeB('adapter', 'shunt and plug of the rail adapter', 'from memory'), rectangular(0.002)],
  ]);

/** Mean resistance over resistance at the moment of stall. */
function backToOnset(series: StallSeries, { fromS, toS }: Stretch): Quantity {
  const points = series.ohms(fromS, toS);
  const { m, b } = linearRegression(points);
  const middle = mean(points.map(([t]) => t));
  const ratio = (b + m * middle) / b;
  const spread = points.reduce((sum, [t]) => sum + (t - middle) ** 2, 0);
  const scatter = points.reduce((sum, [t, ohm]) => sum + (ohm - b - m * t) ** 2, 0) / (points.length - 2);
  /** Neighbours at 1 kHz are alike through the controller's ripple: counted as a quarter of their number. */
  const u = (2 * middle * Math.sqrt(scatter / spread)) / b;
  const early = typeB('early warmth', 'warming in the first 60 ms against the straight line', 'computed');
  return uncertain(ratio, [
    [typeA('slope', 'scatter about the straight line', points.length / 4), u],
    [early, rectangular(Math.abs(ratio - 1) * 0.2)],
  ]);
}
