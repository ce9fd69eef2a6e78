// SPDX-License-Identifier: MIT
// Speed per volt over the travel of the throttle: two straight lines. Where the lower one meets zero the motor starts;
// where the upper one meets the speed at full throttle the controller gives all it has. Pure.
import { linearRegression } from 'simple-statistics';
import { combined, widened, type Quantity } from '#core/measurements/quantity';
import { rectangular, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, reading } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import { speedOf } from '../motor-step.ts';
import type { Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

type Input = AnalysisInput<Evidence>;
export interface Point {
  readonly at: number;
  /** rpm a volt at the controller. */
  readonly perVolt: Quantity;
  readonly stretch: Stretch;
}
/** Points up to here belong to the start; those up to the next, and below this share of the full speed, to the end. */
const smallUpTo = 0.45;
const straightUpTo = 0.9;
const fullFrom = 0.96;
/** The last part of the travel, from the point before full throttle on. */
export const lastStep = 0.03;
/** What a throttle that is not quite straight, and drag that is not either, move such a crossing by; from memory. */
const bentShare = 0.005;

export function pointsOf(input: Input): Point[] {
  return input.evidence.points.map(({ throttle, stretch }) => ({
    at: throttle,
    stretch,
    perVolt: combined(
      [speedOf(input, stretch), reading(input, 'controllerVoltage', stretch)],
      (rpm, volts) => rpm / volts,
    ),
  }));
}
/** Share of the travel at which the motor starts. */
export function startOf(points: readonly Point[]): Quantity {
  const small = points.filter(({ at }) => at < smallUpTo);
  const at = small.map((point) => point.at);
  const crossing = combined(
    small.map(({ perVolt }) => perVolt),
    (...y) => {
      const { m, b } = lineThrough(at, y);
      return -b / m;
    },
  );
  return bent(crossing, 'start');
}
export interface End {
  /** Share of the travel at which the line reaches the speed of full throttle: 1 where nothing bends before. */
  readonly meets: Quantity;
  /** What the speed gains over the last step, of what the line gains. */
  readonly growth: Quantity;
  /** Speed per volt that the whole travel would gain along the line. */
  readonly slope: Quantity;
}
/** Below full throttle's speed the controller has more to give: there the line is straight. */
const isStraight = ({ at, perVolt }: Point, full: Point): boolean =>
  at < straightUpTo && perVolt.value < fullFrom * full.perVolt.value;

export function endOf(points: readonly Point[]): End {
  const [near, full] = points.slice(-2);
  if (full.at !== 1) throw new NotMeasurable('The run ended before full throttle. Run again.');
  const straight = points.filter((point) => isStraight(point, full)).slice(-3);
  const inputs = [...straight, near, full].map(({ perVolt }) => perVolt);
  const at = straight.map((point) => point.at);
  const line = (y: readonly number[]) => lineThrough(at, y.slice(0, at.length));
  const last = (y: readonly number[]) => y.slice(-2) as [number, number];
  const meets = combined(inputs, (...y) => (last(y)[1] - line(y).b) / line(y).m);
  const growth = combined(inputs, (...y) => (last(y)[1] - last(y)[0]) / (line(y).m * (1 - near.at)));
  return {
    meets: bent(meets, 'end'),
    growth: widened(growth, bend('growth'), rectangular(bentShare * 4)),
    slope: combined(inputs, (...y) => line(y).m),
  };
}
const bend = (id: string) => typeB(`bend ${id}`, 'throttle and drag not quite straight', 'from memory');
const bent = (share: Quantity, id: string): Quantity => widened(share, bend(id), rectangular(bentShare));

const lineThrough = (x: readonly number[], y: readonly number[]) =>
  linearRegression(x.map((at, k) => [at, y[k]]));
