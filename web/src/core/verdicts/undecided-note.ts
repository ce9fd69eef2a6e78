// SPDX-License-Identifier: MIT
// What would settle an undecided result, in numbers: repeats where scatter rules, a calibration where one fixed
// error rules, or the word that the part stands too near the limit. It decides nothing.
import type { Measured } from '../measurements/measurement.ts';
import type { Limit } from './limit.ts';

/** Distance in standard uncertainties from which a verdict is certain enough, for a near-normal budget. */
const coverage = 1.96;
const repeatsAtMost = 50;

export function whatWouldSettle(finding: Measured, limit: Limit): string {
  const distance = nearest(finding.value, limit);
  const scatterU = Math.hypot(
    ...finding.budget.filter((line) => line.shape === 'student').map((line) => line.u),
  );
  const fixedU = Math.sqrt(Math.max(0, finding.u ** 2 - scatterU ** 2));
  const [first] = finding.budget;
  const share = first ? Math.round((100 * first.u ** 2) / finding.u ** 2) : 0;
  const ruled = first ? ` ${first.source} makes ${share} % of the doubt.` : '';
  return `${near(finding, distance)}${ruled} ${advice(distance, scatterU, fixedU, first?.source)}`;
}
function near({ unit, interval, value }: Measured, distance: number): string {
  const half = interval[1] - value;
  return `The value is ${figure(distance)} ${unit} from its limit and known to ${figure(half)} ${unit}.`;
}
function advice(distance: number, scatterU: number, fixedU: number, first = ''): string {
  const room = (distance / coverage) ** 2 - fixedU ** 2;
  const repeats = room > 0 ? Math.ceil(scatterU ** 2 / room) : Number.POSITIVE_INFINITY;
  if (repeats <= repeatsAtMost) return `${Math.max(2, repeats)} runs averaged would settle it.`;
  const wanted = figure(distance / coverage);
  if (first.startsWith('gain') || first.startsWith('offset'))
    return `Repeats don't help; a calibration of that tap to better than ${wanted} (standard uncertainty) would.`;
  return `Repeats alone don't settle it: the standard uncertainty must fall below ${wanted}. Treat it as on the limit.`;
}
const nearest = (value: number, { min, max }: Limit): number =>
  Math.min(
    min === undefined ? Number.POSITIVE_INFINITY : Math.abs(value - min),
    max === undefined ? Number.POSITIVE_INFINITY : Math.abs(max - value),
  );
const figure = (value: number): string => Number(value.toPrecision(2)).toString();
