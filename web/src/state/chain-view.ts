// SPDX-License-Identifier: MIT
// What the car's screen shows, worked out from stored results and live values: tags, plates, the sentence at
// the top. Pure: give it the same facts and it gives the same picture.
import type { VerdictWord } from '#core/verdicts/limit';
import { tagOutline } from './chain-drawing.ts';
import type { Car } from '#core/parts/part';
import { chainPlaces, placeOf, type ChainPlace } from './chain-places.ts';
import { ageWords, isOld, liveFigure } from './figures.ts';
import { newestRuns, type ShownCheck } from './part-runs.ts';
import { currentWords, predictedWords, type RaceWire } from './race-load.ts';
import { resultDetail, type ResultLine, type RunSummary } from './run-summary.ts';
import { verdictClass, verdictTitle, worst } from './verdict-words.ts';

export interface LiveValue {
  readonly value: number | null;
  readonly unit: string;
  readonly fresh: boolean;
  readonly age: string;
}
export type Live = (tap: string) => LiveValue | null;

export interface PartStanding {
  readonly verdict: VerdictWord;
  readonly old: boolean;
  readonly age: string;
  readonly detail: string;
  /** Whether any check speaks for the place. */
  readonly checked: boolean;
}
/** What the tags are worked out from. */
export interface ChainFacts {
  readonly runs: readonly RunSummary[];
  /** All there are; none while the bench has not told them yet. */
  readonly checks: readonly ShownCheck[];
  readonly car: Car;
  readonly nowMs: number;
  readonly overtaken?: Overtaken;
}
export interface TagView extends PartStanding {
  readonly id: string;
  readonly title: string;
  readonly word: string;
  readonly tone: string;
  readonly running: boolean;
  readonly href: string;
  readonly name: string;
  readonly outline: string;
  readonly x: number;
  readonly textY: number;
  readonly holeX: number;
  readonly holeY: number;
  readonly ringX: number;
  readonly ringY: number;
  readonly branch: boolean;
}
export interface PlateView {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly stale: boolean;
  readonly lines: readonly { readonly text: string; readonly y: number }[];
}

interface Dated {
  readonly verdict: VerdictWord;
  readonly result: ResultLine;
  readonly atMs: number;
  readonly old: boolean;
}
/** Whether a repair or another limit has overtaken a verdict. */
export type Overtaken = (run: RunSummary, result: ResultLine) => boolean;
const never: Overtaken = () => false;
function dated(runs: readonly RunSummary[], nowMs: number, overtaken: Overtaken): Dated[] {
  return runs.flatMap((run) => {
    const atMs = Date.parse(run.startedAt);
    const old = (result: ResultLine) => isOld(atMs, nowMs) || overtaken(run, result);
    return run.results
      .filter((result) => result.judged)
      .map((result) => ({ verdict: result.verdict, result, atMs, old: old(result) }));
  });
}
/** The checks that a place shows. */
export const checksAt = <Shown extends ShownCheck>(place: ChainPlace, checks: readonly Shown[]): Shown[] =>
  checks.filter((check) => placeOf(check).id === place.id);

/** The verdict that speaks for a place: the worst fresh one, else the worst of the old. */
export function standing(place: ChainPlace, facts: ChainFacts): PartStanding {
  const { runs, car, nowMs, overtaken = never } = facts;
  const shown = checksAt(place, facts.checks);
  const checked = shown.length > 0;
  const all = dated(newestRuns(runs, shown, car), nowMs, overtaken);
  const fresh = all.filter(({ old }) => !old);
  const chosen = worst(fresh) ?? worst(all);
  if (!chosen) {
    const detail = checked || facts.checks.length === 0 ? 'Not checked yet' : 'No check for it yet';
    return { verdict: 'not measured', old: false, age: 'never', detail, checked };
  }
  const { old } = chosen;
  const age = ageWords(chosen.atMs, nowMs) + (old ? ', old' : '');
  return { verdict: chosen.verdict, old, age, detail: resultDetail(chosen.result), checked };
}
/** No car runs without leads and radio, entered or not. A motor without sensors has no harness; a drive train that
 *  nobody entered is missing, unless its checks were run all the same. */
function isMissing({ id }: ChainPlace, { car, runs, checks }: ChainFacts): boolean {
  if (id === 'harness') return !car.motor.sensored;
  if (id !== 'mesh' || car.drive) return false;
  const ofDrive = checks.filter(({ part }) => part === 'drive');
  return newestRuns(runs, ofDrive, car).length === 0;
}
/** The places that this car has. */
export const placesOf = (facts: ChainFacts): ChainPlace[] =>
  chainPlaces.filter((place) => !isMissing(place, facts));

export function tagView(place: ChainPlace, stands: PartStanding, running: boolean): TagView {
  const [x, y] = place.tag;
  const word = running ? 'Running' : verdictTitle(stands.verdict);
  return {
    ...stands,
    id: place.id,
    title: place.title,
    word,
    tone: verdictClass(stands.verdict),
    running,
    href: `#/car/${place.id}`,
    name: `${place.title}: ${word.toLowerCase()}, ${stands.detail}, ${stands.age}`,
    outline: tagOutline(x, y, place.hole),
    x,
    textY: place.hole === 'top' ? y + 7 : y,
    holeX: x + place.holeX,
    holeY: place.hole === 'top' ? y + 8 : y + 80,
    ringX: place.ring[0],
    ringY: place.ring[1],
    branch: place.branch,
  };
}
/** `running`: the place of the check that is being run. */
export const tagViews = (facts: ChainFacts, running: string | null): TagView[] =>
  placesOf(facts).map((place) => tagView(place, standing(place, facts), place.id === running));

const plateSpots: readonly { id: string; x: number; y: number; taps: readonly string[] }[] = [
  { id: 'pack', x: 650, y: 394, taps: ['packVoltage'] },
  { id: 'controller', x: 565, y: 276, taps: ['thermistorController'] },
  { id: 'motor', x: 908, y: 234, taps: ['thermistorMotor'] },
  { id: 'leads', x: 722, y: 333, taps: ['packCurrentNarrow'] },
  { id: 'rail', x: 440, y: 302, taps: ['railVoltage', 'railCurrent'] },
  { id: 'servo', x: 326, y: 325, taps: ['thermistorServo'] },
];
/** Plates of the taps that have ever delivered; none before a rig spoke. */
export function plateViews(live: Live): PlateView[] {
  return plateSpots.flatMap((spot) => {
    const values = spot.taps.map(live).filter((value) => value !== null);
    if (values.length === 0) return [];
    const stale = values.some((value) => !value.fresh);
    const texts = values.map((value) =>
      value.value === null ? 'not seen' : liveFigure(value.value, value.unit),
    );
    return [plateOf(spot, stale ? [values[0].age] : texts, stale)];
  });
}
/** Plates of what race load will bring: dashed where no run tells. */
export function racePlates(wires: readonly RaceWire[]): PlateView[] {
  return plateSpots.flatMap((spot) => {
    const wire = wires.find(({ place }) => place === spot.id);
    if (!wire) return [];
    const current = currentWords(wire);
    const drop = wire.dropV ? `\u2212${predictedWords(wire.dropV, 'V')}` : 'drop not measured';
    const texts = spot.id === 'pack' ? [drop] : [current, drop];
    return [plateOf(spot, texts, wire.dropV === null)];
  });
}
function plateOf(
  { id, x, y }: { id: string; x: number; y: number },
  texts: string[],
  stale: boolean,
): PlateView {
  const height = texts.length > 1 ? 46 : 27;
  const width = Math.max(...texts.map((text) => text.length)) * 8.2 + 20;
  const lines = texts.map((text, index) => ({ text, y: texts.length > 1 ? index * 19 - 5 : 5 }));
  return { id, x, y, width, height, stale, lines };
}

export interface Tally {
  readonly verdict: VerdictWord;
  readonly count: number;
}
export function tally(tags: readonly TagView[]): Tally[] {
  const order: readonly VerdictWord[] = ['fail', 'undecided', 'not measured', 'pass'];
  return order
    .map((verdict) => ({ verdict, count: tags.filter((tag) => tag.verdict === verdict).length }))
    .filter(({ count }) => count > 0);
}
/** The answer first: ready or not, and why. Only places that a check speaks for count. */
export function carSentence(tags: readonly TagView[], car: string, event: string): string {
  const checked = tags.filter((tag) => tag.checked);
  const failing = checked.filter((tag) => tag.verdict === 'fail').map((tag) => tag.title.toLowerCase());
  if (failing.length > 0) {
    const verb = failing.length > 1 ? 'fail' : 'fails';
    return `Not ready for ${event}: ${failing.join(' and ')} ${verb}`;
  }
  if (checked.every((tag) => tag.age === 'never')) return `${car} has not been measured yet`;
  const open = checked.filter((tag) => tag.verdict !== 'pass').map((tag) => tag.title.toLowerCase());
  if (open.length > 0) return `Not settled for ${event}: ${open.join(' and ')} open`;
  return `${car} passes what was checked for ${event}`;
}
