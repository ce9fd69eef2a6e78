// SPDX-License-Identifier: MIT
// Results that belong on a trace: where a finding says which tap shows its very quantity, its value with the interval,
// its limits and the stretches they came from. From the record alone, pure; nothing is measured or judged here.
import { tapWords } from '#core/samples/tap-titles';
import type { UnitWish } from '#core/units/shown-unit';
import type { Finding } from '#core/measurements/measurement';
import type { Judged, VerdictWord } from '#core/verdicts/limit';
import { chartUnit, type ChartUnit } from './chart-units.ts';
import type { ChartRange } from './chart-window.ts';
import { decimalsFor, figure } from './figures.ts';

export interface Bound {
  readonly side: 'at least' | 'at most' | 'exactly';
  /** In the finding's unit, as `value` and `interval`. */
  readonly at: number;
}
export interface Level {
  readonly id: string;
  readonly tap: string;
  readonly title: string;
  readonly unit: string;
  readonly verdict: VerdictWord;
  /** False for a result that only informs. */
  readonly judged: boolean;
  /** Null where it was not measured. */
  readonly value: number | null;
  readonly interval: readonly [number, number] | null;
  readonly bounds: readonly Bound[];
  readonly stretches: readonly ChartRange[];
}
/** Of a record's findings and verdicts, those that say which tap's level they are. */
export function levelsOf(findings: readonly Finding[], judged: readonly Judged[]): Level[] {
  return findings.flatMap((finding) => {
    const said = judged.find(({ id }) => id === finding.id);
    const level = finding.level === undefined ? null : levelOf(finding, finding.level, said);
    return level && (level.value !== null || level.bounds.length > 0) ? [level] : [];
  });
}
function levelOf(finding: Finding, tap: string, said: Judged | undefined): Level {
  const { id, title, unit } = finding;
  const verdict = said?.verdict ?? 'not measured';
  const shared = {
    id,
    tap,
    title,
    unit,
    verdict,
    judged: said?.limit !== undefined,
    bounds: boundsOf(said?.limit),
  };
  if (!finding.measured) return { ...shared, value: null, interval: null, stretches: [] };
  const { value, interval, evidence } = finding;
  return { ...shared, value, interval, stretches: evidence };
}
function boundsOf(limit: Judged['limit']): Bound[] {
  const { min, max } = limit ?? {};
  if (min !== undefined && min === max) return [{ side: 'exactly', at: min }];
  return [
    ...(min === undefined ? [] : [{ side: 'at least' as const, at: min }]),
    ...(max === undefined ? [] : [{ side: 'at most' as const, at: max }]),
  ];
}
/** The value with its interval, in the chart's unit, and what stands at the end of its line. */
export interface ValueLine {
  readonly at: number;
  readonly interval: readonly [number, number];
  /** "6.98 ± 0.02 V, pass". */
  readonly words: string;
}
export interface LimitLine {
  readonly at: number;
  /** Where a value is beyond it. */
  readonly bad: 'above' | 'below' | 'both';
  /** "limit at least 4.5 V". */
  readonly words: string;
}
export interface LevelLines {
  readonly id: string;
  readonly title: string;
  /** Colour token of the value's line. */
  readonly colour: string;
  readonly value: ValueLine | null;
  readonly limits: readonly LimitLine[];
  readonly stretches: readonly ChartRange[];
}
const colours: Readonly<Record<VerdictWord, string>> = {
  pass: '--pass',
  fail: '--fail',
  undecided: '--und',
  'not measured': '--nm',
};
const badSide = { 'at least': 'below', 'at most': 'above', exactly: 'both' } as const;

/** Of one tap, in the unit of its axis; the result that is looked at comes first. */
export function levelLines(
  levels: readonly Level[],
  tap: string,
  unit: ChartUnit,
  looked?: string,
): LevelLines[] {
  return levels
    .filter((level) => level.tap === tap)
    .toSorted((a, b) => Number(b.id === looked) - Number(a.id === looked))
    .map((level) => ({
      id: level.id,
      title: level.title,
      colour: level.judged ? colours[level.verdict] : '--soft',
      value: valueLine(level, unit),
      limits: level.bounds.map((bound) => limitLine(bound, unit)),
      stretches: level.stretches,
    }));
}
/** Of the traces that are drawn, each with the trace's name as inside of a sentence. */
export const shownLevels = (
  levels: readonly Level[],
  taps: readonly string[],
  wish: UnitWish,
): (LevelLines & { readonly trace: string })[] =>
  levels
    .filter(({ tap }) => taps.includes(tap))
    .flatMap((level) =>
      levelLines([level], level.tap, chartUnit(level.unit, wish)).map((lines) => ({
        ...lines,
        trace: tapWords(level.tap),
      })),
    );
function valueLine({ value, interval, verdict, judged }: Level, unit: ChartUnit): ValueLine | null {
  if (value === null || interval === null) return null;
  const [low, high] = [unit.value(interval[0]), unit.value(interval[1])];
  const at = unit.value(value);
  const said = figuresOf(at, [low, high], unit.unit);
  return { at, interval: [low, high], words: judged ? `${said}, ${verdict}` : said };
}
function figuresOf(at: number, [low, high]: readonly [number, number], symbol: string): string {
  const half = (high - low) / 2;
  const [value, plusMinus, from, to] = [at, half, low, high].map((x) => figure(x, decimalsFor(half)));
  const even = Math.abs(at - low - half) <= 0.25 * half;
  return even
    ? `${value}\u00a0±\u00a0${plusMinus}\u00a0${symbol}`
    : `${value}\u00a0${symbol}, between ${from} and ${to}`;
}
function limitLine({ side, at }: Bound, unit: ChartUnit): LimitLine {
  const shown = Number(unit.value(at).toPrecision(4));
  const decimals = (String(Math.abs(shown)).split('.')[1] ?? '').length;
  return {
    at: unit.value(at),
    bad: badSide[side],
    words: `limit ${side} ${figure(shown, decimals)}\u00a0${unit.unit}`,
  };
}
/** One sentence, for who can't see the lines. */
export function levelWords({ title, value, limits }: LevelLines): string {
  const told = [value?.words ?? 'not measured', ...limits.map(({ words }) => words)];
  return `${title}: ${told.join(', ')}`;
}
