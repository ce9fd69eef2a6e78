// SPDX-License-Identifier: MIT
// What the hand-over sheet of one car says, worked out from its newest runs and its parts: one row a check, its worst
// result first, set-up values, what whoever drives it should know. Pure; it knows no paper.
import { newestSetUp, type SetUpKind } from '#core/parts/set-up';
import { finalDriveRatio, rollOutM } from '#core/gearing/gearing';
import { isOfPart } from '#core/parts/identity';
import { partRefOf, type Car } from '#core/parts/part';
import type { Limit, VerdictWord } from '#core/verdicts/limit';
import { figure, readingWords } from '../figures.ts';
import { partTitles } from '../part-words.ts';
import { limitRange, type ResultLine, type RunSummary } from '../run-summary.ts';
import { leading } from '../verdict-words.ts';

export interface SheetRow {
  readonly part: string;
  readonly checked: string;
  readonly verdict: VerdictWord;
  readonly value: string;
  readonly limit: string;
  readonly kind: string;
  readonly figures: {
    readonly value: number;
    readonly interval: readonly [number, number];
    readonly limit: Limit;
  } | null;
  readonly runId: string;
  readonly resultId: string;
}
export interface SheetContent {
  readonly car: string;
  readonly occasion: string;
  readonly sentence: string;
  readonly counts: Readonly<Record<VerdictWord, number>>;
  readonly rows: readonly SheetRow[];
  /** Kinds of part that no run speaks for. */
  readonly unchecked: readonly string[];
  readonly setUp: readonly SetUpRow[];
  readonly notes: readonly string[];
  readonly rig: string;
  readonly madeAt: string;
}
export interface SheetWish {
  readonly car: Car;
  readonly runs: readonly RunSummary[];
  readonly occasion: string;
  readonly notes: string;
  /** ISO 8601. */
  readonly madeAt: string;
}
export function sheetContent({ car, runs, occasion, notes, madeAt }: SheetWish): SheetContent {
  const newest = newestOfCar(runs, car);
  const rows = newest.flatMap(rowOf);
  const counts = { pass: 0, fail: 0, undecided: 0, 'not measured': 0 };
  for (const { verdict } of rows) counts[verdict]++;
  return {
    car: car.name,
    occasion,
    sentence: sentenceOf(counts, rows.length),
    counts,
    rows,
    unchecked: Object.values(partTitles).filter((title) => rows.every(({ part }) => part !== title)),
    setUp: setUpOf(car),
    notes: [...ownNotes(notes), ...rows.flatMap(noteOf)],
    rig: newest[0]?.rig ?? '',
    madeAt,
  };
}
/** The newest ended run of each check on a part that is in the car now, in the order of parts. */
function newestOfCar(runs: readonly RunSummary[], car: Car): readonly RunSummary[] {
  const newest = new Map<string, RunSummary>();
  for (const run of runs) {
    if (run.endedAt === undefined || !isOfPart(run, partRefOf(car, run.part))) continue;
    const known = newest.get(run.checkId);
    if (!known || run.startedAt > known.startedAt) newest.set(run.checkId, run);
  }
  const order = Object.keys(partTitles);
  return [...newest.values()].toSorted((a, b) => order.indexOf(a.part) - order.indexOf(b.part));
}
function rowOf(run: RunSummary): SheetRow[] {
  const result = leading(run.results);
  if (!result) return [];
  return [
    {
      part: partTitles[run.part],
      checked: result.title,
      verdict: result.verdict,
      value: valueOf(result),
      limit: result.limit ? limitRange(result.limit, result.value ?? 1) : 'for information',
      kind: result.limit?.kind ?? '',
      figures: figuresOf(result),
      runId: run.id,
      resultId: result.id,
    },
  ];
}
const valueOf = ({ value, interval, unit }: ResultLine): string =>
  value === undefined || !interval ? 'none' : readingWords(value, interval, unit);
const figuresOf = ({ value, interval, limit }: ResultLine): SheetRow['figures'] =>
  value === undefined || !interval || !limit ? null : { value, interval, limit };

function sentenceOf(counts: SheetContent['counts'], rows: number): string {
  if (rows === 0) return 'Nothing was checked on this car yet';
  if (counts.fail > 0)
    return `Not ready: ${counts.fail} of ${rows} checks ${counts.fail === 1 ? 'fails' : 'fail'}`;
  const open = counts.undecided + counts['not measured'];
  if (open > 0) return `Not settled: ${open} of ${rows} checks ${open === 1 ? 'is' : 'are'} open`;
  return rows === 1 ? 'The one check that was made passes' : `All ${rows} checks that were made pass`;
}
export interface SetUpRow {
  readonly what: string;
  readonly value: string;
  /** ISO 8601, when the value of today was set; undefined where nobody noted it. */
  readonly since?: string;
}
const setUpOf = (car: Car): SetUpRow[] =>
  [...steering(car), ...throttleAndRail(car), ...gearing(car), ...timing(car)].map(([what, value, kind]) => ({
    what,
    value,
    since: kind && newestSetUp(car, kind)?.at,
  }));
type DatedRow = readonly [what: string, value: string, kind?: SetUpKind];
const us = (width: number) => figure(width, 0);

function steering({ radio, servo }: Car): DatedRow[] {
  const { steering: widths } = radio ?? {};
  const { endPoints } = servo;
  return [
    ...(widths
      ? [
          ['Steering left, right', `${us(widths.leftUs)} and ${us(widths.rightUs)} µs`] as const,
          ['Steering centre', `${us(widths.centreUs)} µs`] as const,
        ]
      : []),
    ...(endPoints
      ? [
          [
            'Steering end points',
            `${us(endPoints.shortUs)} and ${us(endPoints.longUs)} µs`,
            'end-points',
          ] as const,
        ]
      : []),
  ];
}
const throttleAndRail = ({ controller: { throttle, railSettingV } }: Car): DatedRow[] => [
  [
    'Throttle brake, neutral, full',
    `${us(throttle.lowUs)}, ${us(throttle.neutralUs)}, ${us(throttle.highUs)} µs`,
  ],
  ['Receiver rail set to', `${figure(railSettingV, 1)} V`, 'rail-setting'],
];
const gearing = ({ drive }: Car): DatedRow[] =>
  drive
    ? [
        [
          'Gearing',
          `${drive.pinionTeeth} on ${drive.spurTeeth}, ${figure(finalDriveRatio(drive), 2)} : 1`,
          'gearing',
        ],
        ['Roll-out', `${figure(rollOutM(drive) * 1e3, 1)} mm a motor turn`],
      ]
    : [];
const timing = ({ motor: { timingDegrees } }: Car): DatedRow[] =>
  timingDegrees === undefined ? [] : [['Timing, end bell', `${figure(timingDegrees, 0)}°`, 'timing']];
const ownNotes = (notes: string): string[] =>
  notes.split('\n').flatMap((line) => (line.trim() ? [line.trim()] : []));
function noteOf({ checked, verdict, value, limit }: SheetRow): string[] {
  if (verdict === 'fail') return [`${checked} fails: ${value}, ${limit}.`];
  if (verdict === 'undecided') return [`${checked} is too close to its limit to call: ${value}, ${limit}.`];
  return verdict === 'not measured'
    ? [`${checked} was not measured: look there first if something is odd.`]
    : [];
}
