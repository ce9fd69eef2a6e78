// SPDX-License-Identifier: MIT
// One stretch of a record as a small chart for the sheet: lowest and highest value of each of 160 columns. Text out.
import type { Series } from '#core/samples/sample-store';
import { niceSteps, stepDecimals } from '../verdict-picture.ts';

export interface SheetChart {
  readonly title: string;
  readonly unit: string;
  readonly series: Series;
}
const columns = 160;
const box = { left: 34, right: 326, top: 8, bottom: 100 } as const;

/** Null for fewer than two values. */
export function chartSvg({ title, unit, series }: SheetChart): string | null {
  const { timeS, value } = series;
  if (value.length < 2) return null;
  const [from, to] = [timeS[0], timeS[timeS.length - 1]];
  const bands = bandsOf(series, from, to);
  const low = Math.min(...bands.map((band) => band.low));
  const high = Math.max(...bands.map((band) => band.high));
  const room = (high - low || 1) * 0.08;
  const y = (v: number) => box.bottom - ((v - low + room) / (high - low + 2 * room)) * (box.bottom - box.top);
  const x = (t: number) => box.left + ((t - from) / (to - from)) * (box.right - box.left);
  const band = bands.map(
    (each) => `M${x(each.atS).toFixed(1)} ${y(each.low).toFixed(1)}V${(y(each.high) - 0.8).toFixed(1)}`,
  );
  return `<svg viewBox="0 0 330 124" width="100%" role="img" aria-label="${title}, ${unit}, over ${(to - from).toFixed(0)} s">${scaleLines(low, high, y)}<path d="${band.join('')}" stroke="#000" stroke-width="1.9" fill="none"/>${timeWords(from, to, x)}</svg>`;
}
interface Band {
  readonly atS: number;
  low: number;
  high: number;
}
function bandsOf({ timeS, value }: Series, from: number, to: number): Band[] {
  const bands: Band[] = [];
  value.forEach((v, i) => {
    const column = Math.min(columns - 1, Math.floor(((timeS[i] - from) / (to - from || 1)) * columns));
    const band = (bands[column] ??= { atS: timeS[i], low: v, high: v });
    band.low = Math.min(band.low, v);
    band.high = Math.max(band.high, v);
  });
  return bands.filter(Boolean);
}
function scaleLines(low: number, high: number, y: (v: number) => number): string {
  const steps = niceSteps(low, high).filter((_, index, all) => index % Math.ceil(all.length / 4) === 0);
  const decimals = stepDecimals((steps[1] ?? high) - steps[0] || 1);
  return steps
    .map(
      (step) =>
        `<path d="M${box.left} ${y(step).toFixed(1)}H${box.right}" stroke="#bbb" stroke-width=".7"/><text x="${box.left - 4}" y="${(y(step) + 4).toFixed(1)}" text-anchor="end" font-size="11">${step.toFixed(decimals)}</text>`,
    )
    .join('');
}
const timeWords = (from: number, to: number, x: (t: number) => number): string =>
  [from, (from + to) / 2, to]
    .map((t, index) => {
      const anchor = ['start', 'middle', 'end'][index];
      return `<text x="${x(t).toFixed(1)}" y="118" text-anchor="${anchor}" font-size="11">${(t - from).toFixed(0)} s</text>`;
    })
    .join('');
