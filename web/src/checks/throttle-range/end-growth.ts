// SPDX-License-Identifier: MIT
// How much the speed still grows over the last part of the travel that is meant: the place where it stops growing may
// lie anywhere between the two meanings of a driven width, and within the last part that moves the growth a lot. Pure.
import { type Quantity, widened } from '#core/measurements/quantity';
import { rectangular, typeB } from '#core/measurements/tap-errors';
import type { Controller } from '#core/parts/part';
import type { ClockFit } from '#core/samples/sample-store';
import { middleShift, widthDoubt } from './driven-widths.ts';
import { type End, lastStep } from './travel-lines.ts';

/** Less is no growth: the speed stopped growing before the last part, and the line tells where. */
const leastGrowth = 0.05;
const widths = typeB('widths growth', "throttle widths by the rig's clock or by true time", 'computed');

export function growthAsGiven(
  { meets, growth }: Pick<End, 'meets' | 'growth'>,
  { controller, clock }: { readonly controller: Controller; readonly clock: ClockFit },
): Quantity {
  const grown = growth.value > leastGrowth ? growth.value : Math.min(0, (meets.value - 1) / lastStep + 1);
  const [middle, half] = [middleShift(1, controller, clock), widthDoubt(1, controller, clock)];
  const at = (shift: number) => Math.min(1, Math.max(0, grown + shift / lastStep));
  const [low, value, high] = [middle - half, middle, middle + half].map(at);
  const doubt = rectangular(Math.max(high - value, value - low));
  return { ...widened(growth, widths, doubt), value };
}
