// SPDX-License-Identifier: MIT
// The rig drives widths by its own clock. Widths that were learnt with this rig come out as they were heard; widths of a
// label or of another rig come out off by its clock. Which they are nobody has told, so a share of the travel may lie
// anywhere between the two. Pure.
import { linear, uncertain, type Quantity, type Source } from '#core/measurements/quantity';
import { rectangular, typeB } from '#core/measurements/tap-errors';
import type { Controller } from '#core/parts/part';
import type { ClockFit } from '#core/samples/sample-store';

const source = (id: string): Source =>
  typeB(
    `widths ${id}`,
    "throttle widths by the rig's clock or by true time",
    'fit against the computer clock',
  );
/** Both ends lie a little inside of the rectangle. */
const inside = 0.6;

/** How much of the travel a pulse at that share of it lies beyond, were its width meant in true time. */
function shiftAt(share: number, { throttle }: Controller, { ratio }: ClockFit): number {
  const { neutralUs, highUs } = throttle;
  return (ratio - 1) * (neutralUs / (highUs - neutralUs) + share);
}
/** Half-width of the doubt, as a share of the travel. */
export function widthDoubt(share: number, controller: Controller, clock: ClockFit): number {
  const { neutralUs, highUs } = controller.throttle;
  const known = (clock.halfWidth * neutralUs) / (highUs - neutralUs);
  return inside * Math.abs(shiftAt(share, controller, clock)) + known;
}
/** Between both meanings, as a share of the travel. */
export const middleShift = (share: number, controller: Controller, clock: ClockFit): number =>
  shiftAt(share, controller, clock) / 2;
/** A share of the travel with that doubt, in the middle between both meanings. */
export function asGiven(id: string, share: Quantity, controller: Controller, clock: ClockFit): Quantity {
  const middle = middleShift(share.value, controller, clock);
  const doubt = uncertain(middle, [[source(id), rectangular(widthDoubt(share.value, controller, clock))]]);
  return linear([
    [1, share],
    [1, doubt],
  ]);
}
