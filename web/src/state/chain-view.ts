// SPDX-License-Identifier: MIT
// What the car's screen shows, worked out from stored results and live values: tags, plates, the sentence at
// the top. Pure: give it the same facts and it gives the same picture.
import type { VerdictWord } from '#core/verdicts/limit';
import { tagOutline } from './chain-drawing.ts';
import { chainPlaces, type ChainPlace } from './chain-places.ts';
import { ageWords, isOld, liveFigure } from './figures.ts';
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

/** The newest ended run of every check of this part and car. */
export function newestRuns(runs: readonly RunSummary[], part: string, car: string): RunSummary[] {
  const newest = new Map<string, RunSummary>();
  for (const run of runs) {
    if (run.part !== part || run.car !== car) continue;
    const known = newest.get(run.checkId);
    if (!known || run.startedAt > known.startedAt) newest.set(run.checkId, run);
  }
  return [...newest.values()];
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
/** The verdict that speaks for a place: the worst fresh one, else the worst of the old. */
export function standing(
  place: ChainPlace,
  runs: readonly RunSummary[],
  car: string,
  nowMs: number,
  overtaken: Overtaken = never,
): PartStanding {
  const all = place.part ? dated(newestRuns(runs, place.part, car), nowMs, overtaken) : [];
  const fresh = all.filter(({ old }) => !old);
  const chosen = worst(fresh) ?? worst(all);
  if (!chosen) {
    const detail = place.part === 'pack' || !place.part ? 'No check for it yet' : 'Not checked yet';
    return { verdict: 'not measured', old: false, age: 'never', detail };
  }
  const { old } = chosen;
  const age = ageWords(chosen.atMs, nowMs) + (old ? ', old' : '');
  return { verdict: chosen.verdict, old, age, detail: resultDetail(chosen.result) };
}
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
export function tagViews(
  runs: readonly RunSummary[],
  car: string,
  nowMs: number,
  running: string | null,
  overtaken: Overtaken = never,
): TagView[] {
  return chainPlaces.map((place) =>
    tagView(place, standing(place, runs, car, nowMs, overtaken), running !== null && place.part === running),
  );
}

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
  return plateSpots.flatMap(({ id, x, y, taps }) => {
    const values = taps.map(live).filter((value) => value !== null);
    if (values.length === 0) return [];
    const stale = values.some((value) => !value.fresh);
    const texts = values.map((value) =>
      value.value === null ? 'not seen' : liveFigure(value.value, value.unit),
    );
    if (stale) texts.splice(0, texts.length, values[0].age);
    const height = texts.length > 1 ? 46 : 27;
    const width = Math.max(...texts.map((text) => text.length)) * 8.2 + 20;
    const lines = texts.map((text, index) => ({ text, y: texts.length > 1 ? index * 19 - 5 : 5 }));
    return [{ id, x, y, width, height, stale, lines }];
  });
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
  const checked = tags.filter(
    (tag) => chainPlaces.find((place) => place.id === tag.id)?.part && tag.id !== 'pack',
  );
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
