// SPDX-License-Identifier: MIT
// servo-stall: from the last push to the current at the moment of stall and at rated voltage. Pure.
// While the horn can't move, the servo is a resistance that warms: R(t) = V(t)/I(t) = R0 (1 + k t). A straight line
// through 60 to 240 ms, inrush left out, gives R0 at the moment of stall; stall current = rated V / R0. A current that
// electronics hold is told as it is.
import { linearRegression, mean } from 'simple-statistics';
import { combined, uncertain, type Quantity } from '#core/measurements/quantity';
import { guarded, measured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, reading, trimmedReading, zeroOf } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import type { Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';
import { shapeOf, type PushShape } from './push-shape.ts';
import { seriesOf, stillGrowingShare, type StallSeries } from './stall-series.ts';

export const results = [{ id: 'stall-current', title: 'Stall current at rated voltage', unit: 'A' }] as const;
/** Less than this against the idle current and nothing pushed. */
const leastStallA = 0.5;
/** The widest offset that the procedure commands. */
const widestDegrees = 20;
/** The rail adapter's shunt lies between the rail tap and the servo's plug. */
const shuntOhm = 0.01;
/** What a servo's own electronics take besides its motor (from memory); more than the greatest is a motor that holds. */
const electronicsA = { low: 0, high: 0.03, greatest: 0.05 };
type Input = AnalysisInput<Evidence>;

export function analyse(input: Input): readonly Finding[] {
  return guarded(results, () => {
    const pushes = input.evidence.pushes.map(({ degrees, stretch }) => ({
      degrees,
      series: seriesOf(input.samples, stretch),
    }));
    if (pushes.length < 2) throw new NotMeasurable(brokeOff);
    const [before, last] = pushes.slice(-2);
    requireStall(last.series);
    const shapes = [before, last].map(({ degrees, series }) => shapeOf(degrees, series));
    requireFullyOn(before.series, last.series, last.degrees);
    return [stallAt(input, last.series, shapes[1])];
  });
}
const brokeOff = 'The run ended before the last push. Run again.';
function requireStall(series: StallSeries): void {
  if (series.peakA < leastStallA)
    throw new NotMeasurable(
      `Only ${series.peakA.toFixed(2)} A flowed at the widest push: the horn was not against the block, or the servo is dead. Set the block, then run again.`,
    );
}
/** With the bridge fully on, a wider command brings no more current. */
function requireFullyOn(before: StallSeries, last: StallSeries, degrees: number): void {
  const [was, is] = [before, last].map((series) => series.meanA(endOf(series)));
  if (is > stillGrowingShare * was && degrees < widestDegrees) throw new NotMeasurable(brokeOff);
  if (is > stillGrowingShare * was)
    throw new NotMeasurable(
      `The current still grew from ${was.toFixed(2)} A to ${is.toFixed(2)} A at the widest push: the block gave way, or its degrees per microsecond are entered too small. Look at both, then run again.`,
    );
  if (was > stillGrowingShare * is)
    throw new NotMeasurable(
      `The widest push drew less (${is.toFixed(2)} A) than the one before (${was.toFixed(2)} A): the block gave way or the servo limits itself. Fix the block, let the servo cool, then run again.`,
    );
}
const endOf = ({ endS }: StallSeries): Stretch => ({ fromS: endS - 0.05, toS: endS });

const stallAt = (input: Input, series: StallSeries, shape: PushShape): Finding =>
  shape.kind === 'limited' ? limitedAt(input, shape) : windingAt(input, series, shape);

/** Said as it is: what electronics hold is carried to no other voltage and to no other moment. */
function limitedAt(input: Input, { stretch, softS }: PushShape): Finding {
  const amps = trimmedReading(input, 'railCurrent', stretch, zeroOf(input, 'railCurrent'));
  const volts = reading(input, 'railVoltage', stretch).value;
  return measured(results[0], amps, {
    formula:
      'Mean rail current where it is even. It does not fall as the winding warms: electronics limit it.',
    evidence: [{ ...stretch, taps: ['railVoltage', 'railCurrent'] }],
    notes: [
      `The servo's electronics limit its current, which is no fault. Told as it was at ${volts.toFixed(2)} V, not carried to the rated voltage.`,
      ...softNote(softS),
    ],
  });
}
const softNote = (softS: number): string[] =>
  softS > 0
    ? [`Soft start: the drive came up over some ${(1e3 * softS).toFixed(0)} ms, which is no fault.`]
    : [];

function windingAt(input: Input, series: StallSeries, { stretch, stallS, softS }: PushShape): Finding {
  const { ratedVoltageV } = input.car.servo;
  const ohm = resistanceAt(input, stretch);
  const back = backTo(stallS, series, stretch);
  const current = combined([ohm, back], (r, ratio) => (ratedVoltageV * ratio) / r);
  const afterMs = (1e3 * (stretch.fromS - stallS)).toFixed(0);
  return measured(results[0], current, {
    formula: `${ratedVoltageV} V over the servo's resistance (voltage at its plug over current), the resistance taken back along a straight line from ${afterMs} ms and later to the moment of stall.`,
    evidence: [{ ...stretch, taps: ['railVoltage', 'railCurrent'] }],
    notes: [
      `Mean current of the push ${series.meanA(stretch).toFixed(2)} A; it changed by ${((1 - back.value) * -100).toFixed(1)} % from the moment of stall to the middle of the stretch: the winding limits it.`,
      ...softNote(softS),
    ],
  });
}
/** Mean resistance over the stretch, with everything the taps may be wrong by. */
function resistanceAt(input: Input, stretch: Stretch): Quantity {
  const volts = reading(input, 'railVoltage', stretch);
  const amps = trimmedReading(input, 'railCurrent', stretch, zeroOf(input, 'railCurrent'));
  return combined([volts, amps, shunt(), electronics(input)], (v, i, r, other) => (v - r * i) / (i - other));
}
/** Current at rest before the pushes: its zero drift is that of the pushes and falls out. */
function electronics(input: Input): Quantity {
  const rest = trimmedReading(input, 'railCurrent', input.evidence.idle, zeroOf(input, 'railCurrent'));
  return Math.abs(rest.value) <= electronicsA.greatest ? rest : electronicsFromMemory();
}
const electronicsFromMemory = (): Quantity =>
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
function backTo(stallS: number, series: StallSeries, { fromS, toS }: Stretch): Quantity {
  const points = series
    .ohms(fromS, toS)
    .map(([t, ohm]): [number, number] => [t + series.onsetS - stallS, ohm]);
  const { m, b } = linearRegression(points);
  const middle = mean(points.map(([t]) => t));
  const ratio = (b + m * middle) / b;
  const spread = points.reduce((sum, [t]) => sum + (t - middle) ** 2, 0);
  const scatter = points.reduce((sum, [t, ohm]) => sum + (ohm - b - m * t) ** 2, 0) / (points.length - 2);
  /** Neighbours at 1 kHz are alike through the controller's ripple: counted as a quarter of their number. */
  const u = (2 * middle * Math.sqrt(scatter / spread)) / b;
  const early = typeB('early warmth', 'warming before the stretch against the straight line', 'computed');
  return uncertain(ratio, [
    [typeA('slope', 'scatter about the straight line', points.length / 4), u],
    [early, rectangular(Math.abs(ratio - 1) * 0.2)],
  ]);
}
