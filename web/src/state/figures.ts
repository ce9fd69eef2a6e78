// SPDX-License-Identifier: MIT
// Numbers as people read them: how many digits an uncertainty earns, thousands, units, ages. The page's components
// print what this says and compute nothing. Where no units are handed in, those that the person chose count.
import { shownUnit as shownIn, type ShownUnit, type UnitWish } from '#core/units/shown-unit';
import { chosenUnits } from './chosen-units.ts';

const thin = '\u202f';
const minus = '\u2212';

/** Of a result's own unit, in what the person chose for its kind. */
export const shownUnit = (unit: string, size: number, wish: UnitWish = chosenUnits()): ShownUnit =>
  shownIn(unit, size, wish);
/** Decimals so that `uncertainty` shows one significant digit, two while it begins with 1 or 2. */
export function decimalsFor(uncertainty: number): number {
  if (!(uncertainty > 0) || !Number.isFinite(uncertainty)) return 2;
  const exponent = Math.floor(Math.log10(uncertainty));
  const lead = uncertainty / 10 ** exponent;
  return Math.max(0, Math.min(6, -exponent + (lead < 2.95 ? 1 : 0)));
}
/** "21 640", "−0.35": thousands by a no-break thin gap from 10 000 up, minus as U+2212. */
export function figure(value: number, decimals: number): string {
  const fixed = Math.abs(value).toFixed(decimals);
  const [whole, part] = fixed.split('.');
  const grouped = whole.length > 3 ? whole.replace(/\B(?=(\d{3})+$)/g, thin) : whole;
  const sign = value < 0 && Number(fixed) !== 0 ? minus : '';
  return sign + (part ? `${grouped}.${part}` : grouped);
}
export interface Reading {
  readonly value: string;
  /** Half of the 95 % interval, or null when the interval is too lopsided to say it in one number. */
  readonly plusMinus: string | null;
  readonly unit: string;
  readonly low: string;
  readonly high: string;
}
/** A value with its interval, all in one unit with one number of decimals. */
export function reading(
  value: number,
  interval: readonly [number, number],
  unit: string,
  wish?: UnitWish,
): Reading {
  const shown = shownUnit(unit, value, wish);
  const half = shown.difference((interval[1] - interval[0]) / 2);
  const middle = (interval[0] + interval[1]) / 2;
  const lopsided = Math.abs(shown.difference(value - middle)) > 0.25 * half;
  const decimals = decimalsFor(half);
  const text = (x: number) => figure(shown.value(x), decimals);
  return {
    value: text(value),
    plusMinus: lopsided ? null : figure(half, decimals),
    unit: shown.unit,
    low: text(interval[0]),
    high: text(interval[1]),
  };
}
/** "2.31 ± 0.06 A", or "2.31 A, between 2.20 and 2.35" for a lopsided interval. */
export function readingWords(
  value: number,
  interval: readonly [number, number],
  unit: string,
  wish?: UnitWish,
): string {
  const said = reading(value, interval, unit, wish);
  if (said.plusMinus) return `${said.value}\u00a0±\u00a0${said.plusMinus}\u00a0${said.unit}`;
  return `${said.value}\u00a0${said.unit}, between ${said.low} and ${said.high}`;
}
/** Live tap values: a fixed number of decimals by unit, no uncertainty, for looking at. */
export function liveFigure(value: number, unit: string, wish?: UnitWish): string {
  const shown = shownUnit(unit, 1, wish);
  return `${figure(shown.value(value), liveDecimals(unit))}\u00a0${shown.unit}`;
}
export function liveDecimals(unit: string): number {
  if (unit === 'V' || unit === 'A') return 2;
  return unit === 'C' ? 1 : 0;
}
/** A standard uncertainty to two significant digits, in the shown unit. */
export function twoDigits(value: number): string {
  if (!(value > 0)) return '0';
  const decimals = Math.max(0, Math.min(8, 1 - Math.floor(Math.log10(value))));
  return figure(value, decimals);
}
/** "just now", "12 min ago", "2 h ago", "3 d ago". */
export function ageWords(thenMs: number, nowMs: number): string {
  const minutes = Math.floor((nowMs - thenMs) / 60_000);
  if (minutes < 1) return 'just now';
  if (minutes < 60) return `${minutes} min ago`;
  if (minutes < 48 * 60) return `${Math.floor(minutes / 60)} h ago`;
  return `${Math.floor(minutes / 1440)} d ago`;
}
/** A stored verdict is old after 21 days: common practice, no source. */
export const isOld = (thenMs: number, nowMs: number) => nowMs - thenMs > 21 * 86_400_000;
/** "18:42" today, "22 Jul" before. */
export function whenWords(thenMs: number, nowMs: number): string {
  const then = new Date(thenMs);
  const sameDay = then.toDateString() === new Date(nowMs).toDateString();
  return sameDay
    ? then.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' })
    : then.toLocaleDateString('en-GB', { day: 'numeric', month: 'short' });
}
