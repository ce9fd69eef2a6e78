// SPDX-License-Identifier: MIT
// Which result of the sheet is shown as a chart: the worst verdict, and among those alike the value that stands nearest
// its limit. Pure.
import type { VerdictWord } from '#core/verdicts/limit';
import type { SheetRow } from './sheet-content.ts';

const order: readonly VerdictWord[] = ['fail', 'undecided', 'not measured', 'pass'];

/** Undefined where no row has figures. */
export function chartedRow(rows: readonly SheetRow[]): SheetRow | undefined {
  return rows
    .filter(({ figures }) => figures !== null)
    .toSorted((a, b) => order.indexOf(a.verdict) - order.indexOf(b.verdict) || room(a) - room(b))[0];
}
/** How far the value is from its nearest limit: 1 in the middle of two limits, or as far from the one as that is from
 *  nought. */
function room({ figures }: SheetRow): number {
  const { value, limit } = figures!;
  const ends = [limit.min, limit.max].filter((end) => end !== undefined);
  const nearest = Math.min(...ends.map((end) => Math.abs(value - end)));
  return nearest / (ends.length > 1 ? (ends[1] - ends[0]) / 2 : Math.abs(ends[0]) || 1);
}
