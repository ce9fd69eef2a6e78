// SPDX-License-Identifier: MIT
// What the wires will carry and lose at race load, predicted from the newest runs of the car's parts: current, drop,
// their 95 % half-widths, and which run says so. What no run tells is named with the check that would. Pure.
import { raceCurrentA } from '#checks/race-current';
import type { Car } from '#core/parts/part';
import { named, type CheckId } from '#core/titles/check-titles';
import type { Repair } from '#core/history/part-history';
import { repairedSince } from './overtaken.ts';
import { newestRun, type ShownCheck } from './part-runs.ts';
import type { PlaceId } from './chain-places.ts';
import { ageWords, figure, reading } from './figures.ts';
import type { ResultLine, RunSummary } from './run-summary.ts';

export interface RaceFacts {
  readonly runs: readonly RunSummary[];
  readonly checks: readonly ShownCheck[];
  readonly car: Car;
  readonly nowMs: number;
  /** What was measured before one of these tells nothing any more. */
  readonly repairs?: readonly Repair[];
}
/** A value with half of its 95 % interval; 0 where a person gave it. */
export interface Predicted {
  readonly value: number;
  readonly half: number;
}
export interface RaceWire {
  readonly place: PlaceId;
  readonly title: string;
  readonly currentA: Predicted | null;
  readonly dropV: Predicted | null;
  /** Where current and drop come from, and what is missing; whole sentences. */
  readonly words: readonly string[];
}
/** A result of the newest run of a check, or the check that has to be run for it. */
interface Source {
  readonly lines: readonly (ResultLine & Figures)[];
  readonly from: string;
}
interface Figures {
  readonly value: number;
  readonly interval: readonly [number, number];
}
const isMeasured = (line: ResultLine): line is ResultLine & Figures =>
  line.value !== undefined && line.interval !== undefined;
const halfOf = ({ interval }: Figures): number => (interval[1] - interval[0]) / 2;

function sourceOf(facts: RaceFacts, checkId: string, ids: RegExp): Source | null {
  const check = facts.checks.find(({ id }) => id === checkId);
  const run = check && newestRun(facts.runs, check, facts.car);
  const lines = run?.results.filter(({ id }) => ids.test(id)) ?? [];
  if (!run || lines.length === 0 || !lines.every(isMeasured)) return null;
  if (repairedSince(run, facts.repairs ?? [])) return null;
  return { lines, from: `"${run.checkTitle}", ${ageWords(Date.parse(run.startedAt), facts.nowMs)}` };
}
const wouldTell = (what: string, checkId: CheckId): string =>
  `${what} is not measured: ${named(checkId)} would tell.`;

/** Pack, leads and receiver rail, in chain order. */
export const raceLoad = (facts: RaceFacts): RaceWire[] => [packOf(facts), leadsOf(facts), railOf(facts)];

function packOf(facts: RaceFacts): RaceWire {
  const source = sourceOf(facts, 'pack-sag', /^pack-resistance$/);
  const currentA = raceCurrent(facts);
  const words = source
    ? [`Resistance of pack and leads of ${source.from}.`]
    : [wouldTell('Its sag', 'pack-sag')];
  const dropV = source && acrossAll(source, currentA);
  return { place: 'pack', title: 'Pack', currentA, dropV, words };
}
const raceCurrent = ({ car }: RaceFacts): Predicted => ({ value: raceCurrentA(car), half: 0 });

function leadsOf(facts: RaceFacts): RaceWire {
  const joints = sourceOf(facts, 'joint-drop', /^joint-\d+$/);
  const currentA = raceCurrent(facts);
  const dropV = joints && acrossAll(joints, currentA);
  const said = joints
    ? `Drop over ${joints.lines.length} joints and leads of ${joints.from}.`
    : wouldTell('Their drop', 'joint-drop');
  const place = 'leads';
  return { place, title: 'Leads and joints', currentA, dropV, words: [said] };
}
/** One rig measured all of them: their errors are added. */
function acrossAll({ lines }: Source, { value: amps }: Predicted): Predicted {
  const sum = (of: (line: Figures) => number) => amps * lines.reduce((total, line) => total + of(line), 0);
  return { value: sum(({ value }) => value), half: sum(halfOf) };
}
/** Peak of the steering on its tyres, through the resistance of the rail's source. */
function railOf(facts: RaceFacts): RaceWire {
  const peak = sourceOf(facts, 'servo-scrub', /^scrub-peak-current$/);
  const source = sourceOf(facts, 'rail-sag', /^source-resistance$/);
  const [amps, ohm] = [peak?.lines[0], source?.lines[0]];
  const words = [
    peak ? `Current of ${peak.from}.` : wouldTell('Its current', 'servo-scrub'),
    source ? `Resistance of ${source.from}.` : wouldTell('Its resistance', 'rail-sag'),
  ];
  const currentA = amps ? { value: amps.value, half: halfOf(amps) } : null;
  const dropV = amps && ohm ? product(amps, ohm) : null;
  return { place: 'rail', title: 'Receiver rail', currentA, dropV, words };
}
/** Two independent errors, to first order. */
function product(a: Figures, b: Figures): Predicted {
  return { value: a.value * b.value, half: Math.hypot(b.value * halfOf(a), a.value * halfOf(b)) };
}
/** "40 A", "0.120 ± 0.004 V"; "not measured" for none. */
export function predictedWords(predicted: Predicted | null, unit: string): string {
  if (!predicted) return 'not measured';
  const { value, half } = predicted;
  if (half === 0) return `${figure(value, 0)}\u00a0${unit}`;
  const said = reading(value, [value - half, value + half], unit);
  return `${said.value}\u00a0±\u00a0${said.plusMinus ?? ''}\u00a0${said.unit}`;
}
export const currentWords = ({ currentA }: RaceWire): string =>
  currentA ? predictedWords(currentA, 'A') : 'current not measured';
/** What the prediction rests on before any run. */
export const raceSentence = ({ car }: RaceFacts): string =>
  car.pack.raceCurrentA === undefined
    ? `A prediction for ${figure(raceCurrentA(car), 0)} A, the usual mean of a race (common practice, no source). Enter yours with the pack on the shelf.`
    : `A prediction for ${figure(raceCurrentA(car), 0)} A, as entered with the pack.`;
