// SPDX-License-Identifier: MIT
// What a steady stretch says of a turning motor: bus voltage, pack current less what flows at neutral, and the speed
// from Hall edges of one line. Pure; it knows no check.
import { linear, uncertain, type Quantity } from '#core/measurements/quantity';
import { clockLine, typeA } from '#core/measurements/tap-errors';
import { NotMeasurable, reading, trimmedReading, zeroOf } from '#core/measurements/tap-reading';
import type { AnalysisInput } from './check.ts';
import type { Stretch } from './stretch.ts';

type Input = AnalysisInput<unknown>;
export interface Step {
  readonly volts: Quantity;
  /** Pack current less what flows at neutral, A. */
  readonly driveA: Quantity;
  readonly rpm: Quantity;
  readonly stretch: Stretch;
}
/** Pack current at neutral, A. */
export function neutralCurrent(input: Input, idle: Stretch): Quantity {
  return trimmedReading(input, 'packCurrentNarrow', idle, zeroOf(input, 'packCurrentNarrow'));
}
export function stepOf(input: Input, stretch: Stretch, idleA: Quantity): Step {
  const zero = zeroOf(input, 'packCurrentNarrow');
  const packA = trimmedReading(input, 'packCurrentNarrow', stretch, zero);
  return {
    volts: reading(input, 'controllerVoltage', stretch),
    driveA: linear([
      [1, packA],
      [-1, idleA],
    ]),
    rpm: speedOf(input, stretch),
    stretch,
  };
}
/** Whole electrical turns between the first and the last edge of one polarity. */
export function speedOf({ samples, car }: Input, { fromS, toS }: Stretch): Quantity {
  const edges = samples.edges(fromS, toS);
  const turns = Math.floor((edges.length - 1) / 2);
  if (turns < 10)
    throw new NotMeasurable('Too few Hall edges to tell the speed. Check the sensor cable, then run again.');
  requireEven(edges);
  const spanS = (edges[2 * turns] - edges[0]) * samples.clock.ratio;
  const rpm = ((turns / spanS) * 60) / car.motor.polePairs;
  return uncertain(rpm, [
    clockLine(samples.clock, rpm),
    [typeA(`edges ${fromS.toFixed(3)}`, 'spread of the speed', turns), rpm * speedSpread(edges)],
  ]);
}
/** Relative standard uncertainty of the mean speed from ten parts of the stretch. */
function speedSpread(edges: Float64Array): number {
  const parts = 10;
  const length = Math.floor((edges.length - 1) / parts / 2) * 2;
  if (length < 2) return 0.01;
  const spans = Array.from({ length: parts }, (_, k) => edges[(k + 1) * length] - edges[k * length]);
  const mean = spans.reduce((sum, span) => sum + span, 0) / parts;
  const variance = spans.reduce((sum, span) => sum + (span - mean) ** 2, 0) / (parts - 1);
  return Math.sqrt(variance / parts) / mean;
}
/** A missed or doubled edge shows as a distance far from its neighbours. */
export function requireEven(edges: Float64Array): void {
  const turns = Array.from(edges.subarray(2), (edge, k) => edge - edges[k]);
  const sorted = turns.toSorted((a, b) => a - b);
  const middle = sorted[sorted.length >> 1];
  if (sorted[0] < 0.7 * middle || sorted[sorted.length - 1] > 1.4 * middle)
    throw new NotMeasurable(
      'Hall edges were missed or doubled, so the speed is unknown. Check the sensor cable, then run again.',
    );
}
