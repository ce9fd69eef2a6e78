// SPDX-License-Identifier: MIT
// The radio's steering widths at 100 %, as its part or the person told them. A sentence stands in their place where
// they are not known or can't be.
import { named } from '#core/titles/check-titles';
import { uncertain, type Quantity } from '#core/measurements/quantity';
import { rectangular, typeB } from '#core/measurements/tap-errors';
import { steeringWidthsSchema } from '#core/parts/part';
import type { Evidence } from './evidence.ts';

export interface RadioWidths {
  readonly left: Quantity;
  readonly centre: Quantity;
  readonly right: Quantity;
}
/** What a receiver's pulse may be off by: its steps, and radio-range's own interval; from memory. */
const widthErrorUs = 1.5;
const askFor = `Run ${named('radio-range')}, then run again and enter what it heard.`;

export function radioWidths({ radio }: Evidence): RadioWidths | string {
  if (radio === null) return `The pulses of the radio are not known. ${askFor}`;
  const read = steeringWidthsSchema.safeParse(radio);
  if (!read.success) return `The pulses of the radio can't be: ${read.error.issues[0].message}. ${askFor}`;
  const { leftUs, centreUs, rightUs } = read.data;
  return { left: told('left', leftUs), centre: told('centre', centreUs), right: told('right', rightUs) };
}
const told = (where: string, widthUs: number): Quantity =>
  uncertain(widthUs, [
    [typeB(`radio ${where}`, `the radio's pulse, ${where}`, 'from memory'), rectangular(widthErrorUs)],
  ]);
