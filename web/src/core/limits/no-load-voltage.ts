// SPDX-License-Identifier: MIT
// The voltage a motor's no-load figures are told at: the label's, where the car's pack comes near it, else the pack's
// nominal one. It knows labels only.
import type { Car } from '../parts/part.ts';
import { noLoadReach } from './rating-scaling.ts';

/** Two cells are told at 7.4 V, as labels mostly are; others at as much a cell (common practice, no source). */
export const nominalCellV = 3.7;

export function noLoadV({ motor, pack }: Car): number {
  const nominalV = Number((nominalCellV * pack.cells).toFixed(1));
  const labelV = motor.ratedNoLoadAtV;
  return labelV !== undefined && noLoadReach(nominalV / labelV) ? labelV : nominalV;
}
