// SPDX-License-Identifier: MIT
// The verdict picture as geometry: one scale with posts at the limits, guard bands as wide as the uncertainty on
// both sides of each, the value as a bead with its interval. View box 760 x 152. Decides nothing.
import type { Limit } from '#core/verdicts/limit';
import { decimalsFor, figure, shownUnit } from './figures.ts';

export interface Zone {
  readonly kind: 'bad' | 'guard' | 'good';
  readonly x: number;
  readonly width: number;
}
export interface Mark {
  readonly x: number;
  readonly text: string;
}
export interface VerdictPicture {
  readonly zones: readonly Zone[];
  readonly posts: readonly Mark[];
  readonly guards: readonly Mark[];
  readonly ticks: readonly Mark[];
  /** Baseline of the posts' words: above the zone words, so that they never meet. */
  readonly postTextY: number;
  readonly bead: number;
  readonly from: number;
  readonly to: number;
  /** Set when the value lies outside of the drawn scale: which edge, and the value in words. */
  readonly off: 'left' | 'right' | null;
  readonly words: string;
}

const left = 12;
const right = 748;
/** Where the bead of a value off the scale stands: its arrow has room beyond it. */
const edge = { left: 50, right: 710 } as const;

/** Ends of the scale: limits, value and interval with room; a far value is put off the scale. */
function ends(value: number, half: number, limits: readonly number[]): readonly [number, number] {
  const low = Math.min(...limits);
  const high = Math.max(...limits);
  // A count against a limit of nought has no width of its own to draw to.
  const span = (limits.length > 1 ? high - low : Math.max(Math.abs(low) * 0.5, half * 6)) || 1;
  const room = limits.length > 1 ? span * 0.35 : span;
  const reach = (x: number) => Math.min(Math.max(x, low - room), high + room);
  const from = Math.min(low - room * 0.35 - half, reach(value - 1.5 * half));
  const to = Math.max(high + room * 0.35 + half, reach(value + 1.5 * half));
  return [low >= 0 && from < 0 ? 0 : from, to];
}
/** Round steps of 1, 2 or 5 times a power of ten, five or so on the scale. */
export function niceSteps(from: number, to: number): readonly number[] {
  const raw = (to - from) / 8;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = [1, 2, 5, 10].map((each) => each * power).find((each) => each >= raw)!;
  const first = Math.ceil(from / step - 1e-9);
  const count = Math.floor(to / step + 1e-9) - first + 1;
  return Array.from({ length: count }, (_, index) => (first + index) * step);
}
function zones(limit: Bounds, half: number, at: (x: number) => number): Zone[] {
  const edges: { x: number; kind: Zone['kind'] }[] = [];
  const lowBad = limit.min === undefined ? null : at(limit.min - half);
  const lowGood = limit.min === undefined ? left : at(limit.min + half);
  const highGood = limit.max === undefined ? right : at(limit.max - half);
  const highBad = limit.max === undefined ? null : at(limit.max + half);
  if (lowBad !== null) edges.push({ x: left, kind: 'bad' }, { x: lowBad, kind: 'guard' });
  if (highGood > lowGood) edges.push({ x: lowGood, kind: 'good' });
  if (highBad !== null)
    edges.push({ x: Math.max(lowGood, highGood), kind: 'guard' }, { x: highBad, kind: 'bad' });
  return edges
    .map(({ x, kind }, index) => ({ kind, x, width: (edges[index + 1]?.x ?? right) - x }))
    .filter((zone) => zone.width > 0.5);
}
/** Decimals that tell round steps apart. */
export const stepDecimals = (step: number): number => Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
const clear = (marks: readonly Mark[], others: readonly Mark[], room: number) =>
  marks.filter((mark) => others.every((other) => Math.abs(other.x - mark.x) > room));

/** Value, interval and limit in the limit's own unit; drawn in the shown one. */
export function verdictPicture(
  value: number,
  interval: readonly [number, number],
  limit: Limit,
): VerdictPicture {
  const shown = shownUnit(limit.unit, value);
  const [low, high] = interval;
  return drawn(shown.value(value), [shown.value(low), shown.value(high)], {
    min: limit.min === undefined ? undefined : shown.value(limit.min),
    max: limit.max === undefined ? undefined : shown.value(limit.max),
    unit: shown.unit,
  });
}
type Bounds = Pick<Limit, 'min' | 'max' | 'unit'>;
function drawn(value: number, interval: readonly [number, number], limit: Bounds): VerdictPicture {
  const half = (interval[1] - interval[0]) / 2;
  const limits = [limit.min, limit.max].filter((each) => each !== undefined);
  const [from, to] = ends(value, half, limits);
  const clamp = (x: number) => Math.min(Math.max(x, from), to);
  const at = (x: number) => left + ((clamp(x) - from) / (to - from)) * (right - left);
  const decimals = decimalsFor(half);
  const say = (x: number, places = decimals) => figure(x, places);
  const guardMarks = limits.flatMap((each) => [each - half, each + half]).filter((x) => x > from && x < to);
  const posts = limits.map((each) => ({ x: at(each), text: `limit ${say(each)} ${limit.unit}` }));
  const steps = niceSteps(from, to);
  const tickPlaces = stepDecimals((steps[1] ?? to) - steps[0]);
  const guards = guardMarks.map((x) => ({ x: at(x), text: say(x) }));
  const wide = guards.length < 2 || Math.abs(guards[1].x - guards[0].x) > 60;
  const off = value < from ? 'left' : value > to ? 'right' : null;
  return {
    zones: zones(limit, half, at),
    posts,
    guards: wide ? guards : [],
    ticks: clear(
      steps.map((x) => ({ x: at(x), text: say(x, tickPlaces) })),
      posts,
      34,
    ).filter((tick) => !wide || guards.every((guard) => Math.abs(guard.x - tick.x) > 16)),
    postTextY: 24,
    ...(off
      ? { bead: edge[off], from: edge[off], to: edge[off] }
      : { bead: at(value), from: at(interval[0]), to: at(interval[1]) }),
    off,
    words: `${say(value)} ${limit.unit}, plus or minus ${say(half)}, against ${limits.map((each) => `a limit of ${say(each)}`).join(' and ')}`,
  };
}
