// SPDX-License-Identifier: MIT
// The plot of a calibration as geometry: rig minus meter over the meter's value, each point with its interval, the
// band within which the rig's parts or the new line allow it. View box 560 x 330. Judges nothing.
import { lineU, tapU } from '#core/calibration/adoption';
import type { CalibrationLine, CalibrationPoint } from '#core/calibration/line-calibration';
import type { RigDescription, Tap } from '#core/samples/rig-description';
import { decimalsFor, figure } from './figures.ts';
import { plusMinus, smallUnit } from './tap-calibration.ts';
import { niceSteps, stepDecimals } from './verdict-picture.ts';

export interface ResidualDot {
  readonly x: number;
  readonly y: number;
  readonly low: number;
  readonly high: number;
}
export interface Tick {
  readonly at: number;
  readonly text: string;
}
export interface ResidualPlot {
  readonly dots: readonly ResidualDot[];
  /** Path of the band, closed. */
  readonly band: string;
  /** Path of the line, once there is one. */
  readonly line: string | null;
  readonly zeroY: number;
  readonly xTicks: readonly Tick[];
  readonly yTicks: readonly Tick[];
  readonly yTitle: string;
  readonly xTitle: string;
  /** One sentence that stands for the picture. */
  readonly words: string;
}
export const plotEdges = { left: 64, right: 540, top: 28, bottom: 288 } as const;
const { left, right, top, bottom } = plotEdges;
const bandSteps = 24;

/** U of one point, its own and shared errors together, twice the standard uncertainty. */
const pointU = ({ shownU, meterOwnU, shared }: CalibrationPoint): number =>
  2 * Math.hypot(shownU, meterOwnU, ...shared.map(({ u }) => u));

/** Rig minus meter that a line amounts to, and its U, at what the tap shows. */
function lineAt(tap: Tap, line: CalibrationLine, shown: number) {
  const offset = tap.quantity === 'current' ? 0 : line.offset;
  return { y: shown - (line.gain * shown + offset), u: lineU(tap, line, shown) };
}
/** Currents are read from a zero that each run takes anew, so their points are drawn from theirs. */
function fromZero(tap: Tap, points: readonly CalibrationPoint[]): readonly CalibrationPoint[] {
  const zero = tap.quantity === 'current' ? (points.find(({ meter }) => meter === 0)?.shown ?? 0) : 0;
  return points.map((point) => ({ ...point, shown: point.shown - zero }));
}
export function residualPlot(
  rig: RigDescription,
  tap: Tap,
  taken: readonly CalibrationPoint[],
  line: CalibrationLine | null,
): ResidualPlot {
  const points = fromZero(tap, taken);
  const most = Math.max(...points.map(({ meter }) => meter), tap.quantity === 'current' ? 4 : 8.4);
  const xs = Array.from({ length: bandSteps + 1 }, (_, i) => (most * 1.04 * i) / bandSteps);
  const plain = { ...rig, store: null };
  const band = xs.map((x) => (line ? lineAt(tap, line, x) : { y: 0, u: tapU(plain, tap, x) }));
  const offs = points.map((point) => ({ off: point.shown - point.meter, u: pointU(point) }));
  const reach = Math.max(
    ...band.map(({ y, u }) => Math.abs(y) + u),
    ...offs.map(({ off, u }) => Math.abs(off) + u),
  );
  const at = scales(xs[bandSteps], reach * 1.1);
  return {
    dots: points.map((point, i) => ({
      x: at.x(point.meter),
      y: at.y(offs[i].off),
      low: at.y(offs[i].off - offs[i].u),
      high: at.y(offs[i].off + offs[i].u),
    })),
    band: closed(xs, band, at),
    line: line && path(xs.map((x, i) => [at.x(x), at.y(band[i].y)])),
    zeroY: at.y(0),
    ...ticks(tap, xs[bandSteps], reach * 1.1, at),
    words: plotWords(tap, taken, line),
  };
}
interface Scales {
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
}
const scales = (xMost: number, yMost: number): Scales => ({
  x: (value) => left + (value / xMost) * (right - left),
  y: (value) => (top + bottom) / 2 - (value / yMost) * ((bottom - top) / 2),
});
const path = (points: readonly (readonly [number, number])[]): string =>
  `M${points.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`;
function closed(xs: readonly number[], band: readonly { y: number; u: number }[], at: Scales): string {
  const upper = xs.map((x, i) => [at.x(x), at.y(band[i].y + band[i].u)] as const);
  const lower = xs.map((x, i) => [at.x(x), at.y(band[i].y - band[i].u)] as const);
  return `${path([...upper, ...lower.toReversed()])}Z`;
}
function ticks(tap: Tap, xMost: number, yMost: number, at: Scales) {
  // Up to half a volt or ampere the axis counts in thousandths.
  const { factor, unit } = smallUnit(tap.unit, yMost / 5);
  const ySteps = niceSteps(-yMost * factor, yMost * factor);
  const decimals = stepDecimals(ySteps[1] - ySteps[0]);
  const signed = (value: number) => `${value > 0 ? '+' : ''}${figure(value, decimals)}`;
  return {
    yTicks: everyOther(ySteps).map((value) => ({ at: at.y(value / factor), text: signed(value) })),
    xTicks: everyOther(niceSteps(0, xMost)).map((value) => ({
      at: at.x(value),
      text: figure(value, value % 1 ? 1 : 0),
    })),
    yTitle: `Rig minus meter, ${unit}`,
    xTitle: `${tap.unit} on the meter`,
  };
}
const everyOther = (steps: readonly number[]) =>
  steps.length > 6 ? steps.filter((step) => Math.round(step / (steps[1] - steps[0])) % 2 === 0) : steps;

function plotWords(tap: Tap, points: readonly CalibrationPoint[], line: CalibrationLine | null): string {
  const told = points.map(
    ({ shown, meter }) => `${figure(meter, 3)} on the meter, ${figure(shown, 3)} on the rig`,
  );
  const drawn = line
    ? `Gain ${figure(line.gain, 4)}, offset ${figure(line.offset, 3)}.`
    : 'The band is what the parts of the rig allow.';
  return `${points.length} points in ${tap.unit}: ${told.join('; ') || 'none yet'}. ${drawn}`;
}
export interface PointRow {
  readonly meter: string;
  readonly rig: string;
  readonly difference: string;
}
/** The points as a table, the difference in the plot's unit. */
export function pointRows(tap: Tap, points: readonly CalibrationPoint[]): { unit: string; rows: PointRow[] } {
  const most = Math.max(0, ...points.map(({ shown, meter }) => Math.abs(shown - meter)));
  const { factor, unit } = smallUnit(tap.unit, most);
  const decimals = factor > 1 ? 0 : 2;
  const rows = points.map(({ shown, meter }) => {
    const off = (shown - meter) * factor;
    return {
      meter: figure(meter, 3),
      rig: figure(shown, 3),
      difference: `${off > 0 ? '+' : ''}${figure(off, decimals)}`,
    };
  });
  return { unit, rows };
}
/** "Gain 1.0054 ± 0.0009, zero −2 ± 3 mV." */
export function lineWords(tap: Tap, { gain, gainU, offset, offsetU }: CalibrationLine): string {
  const decimals = decimalsFor(gainU);
  const said = `Gain ${figure(gain, decimals)}\u00a0±\u00a0${figure(gainU, decimals)}`;
  if (tap.quantity === 'current') return `${said}. The zero is taken anew in every run.`;
  const { factor } = tap.quantity === 'temperature' ? { factor: 1 } : smallUnit(tap.unit, offsetU);
  const zero = figure(offset * factor, decimalsFor(offsetU * factor));
  return `${said}, zero ${zero}\u00a0${plusMinus(offsetU, tap.unit)}.`;
}
