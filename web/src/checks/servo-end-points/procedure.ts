// SPDX-License-Identifier: MIT
// Both sides of the steering, first with the wheels off, then as often as the person wants with the wheels on; a
// short hold at the settings that will be proposed; the radio's own per cent last, where the part does not tell it.
import { named } from '#core/titles/check-titles';
import type { Bench } from '../check.ts';
import { railPlan } from '../rail-plan.ts';
import { keepStretch } from '../stretch.ts';
import { clearOfFrictionA, clearOfSlipA } from './bind-watch.ts';
import { hitches, outwardOf, sides, type Evidence, type Hitch, type Search, type Side } from './evidence.ts';
import { marginUs } from './proposal.ts';
import { searchSide } from './search.ts';
import type { SteeringBench } from './steering-bench.ts';
import { SteeringRange } from './steering-range.ts';

const restUs = 1500;
/** Closer to the centre than any stop that is worth looking for. */
const firstUs = 32;
/** With the wheels on, the search begins this far inside the stop found without. */
const insideUs = 128;
/** The last step pressed already, by up to some 16 us: the hold is this far inside it. */
const holdInsideUs = marginUs + 16;
const holdS = 0.3;
const hitchWords: Readonly<Record<Hitch, string>> = {
  'wheels off': 'Servo in the car with its linkage on, wheels off. Fingers away from the steering.',
  'wheels hanging': 'Wheels on, the car held up so that its wheels hang.',
  'suspension pressed down': 'Wheels clear of the ground, suspension pressed down as far as it goes.',
};
const stepsOfAll = 6;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.powerUp(railPlan);
  const searches = await searchStops(bench);
  tell(bench, 5, 'The servo holds the proposed settings.');
  const holds: Evidence['holds'] = [];
  for (const side of sides) holds.push(...(await holdAt(bench, side, searches)));
  await bench.steer(restUs, 0.3);
  return { searches, holds, radio: bench.car.radio?.steering ?? (await askRadio(bench)) };
}
/** Every look at both sides, of a servo that runs. */
export async function searchStops(bench: SteeringBench): Promise<Search[]> {
  const range = new SteeringRange(bench);
  const searches = await searchBoth(bench, range, 'wheels off', []);
  const more = await bench.askNumber(
    'How many more looks with the wheels on? 0: none, 1: hanging, 2: hanging and pressed down.',
    { unit: 'looks', min: 0, max: hitches.length - 1 },
  );
  for (const hitch of hitches.slice(1, 1 + Math.round(more)))
    searches.push(...(await searchBoth(bench, range, hitch, searches)));
  return searches;
}
async function searchBoth(
  bench: SteeringBench,
  range: SteeringRange,
  hitch: Hitch,
  before: readonly Search[],
): Promise<Search[]> {
  await bench.steer(restUs, 0.3);
  await bench.ask(hitchWords[hitch]);
  const searches: Search[] = [];
  for (const side of sides) {
    tell(bench, 2 + hitches.indexOf(hitch), `Outward on the side of ${side}er pulses, ${hitch}.`);
    const fromUs = restUs + outwardOf(side) * startUs(side, before);
    // A horn that held once does not slip: from then on the stop is pressed more gently.
    const held = [...before, ...searches].some(({ met }) => met);
    const leastRiseA = held ? clearOfFrictionA : clearOfSlipA;
    searches.push(await searchSide(bench, range, { side, hitch, fromUs, leastRiseA }));
  }
  return searches;
}
function startUs(side: Side, before: readonly Search[]): number {
  const found = tightestUs(side, before);
  return found === null ? firstUs : Math.max(firstUs, found - insideUs);
}
/** The last width of the search that came least far, from the centre; null when none met a stop. */
function tightestUs(side: Side, searches: readonly Search[]): number | null {
  const met = searches.filter((search) => search.side === side && search.met);
  const ends = met.map(({ steps }) => Math.abs((steps.at(-1)?.widthUs ?? restUs) - restUs));
  return ends.length === 0 ? null : Math.min(...ends);
}
async function holdAt(bench: Bench, side: Side, searches: readonly Search[]): Promise<Evidence['holds']> {
  const endUs = tightestUs(side, searches);
  if (endUs === null) return [];
  const widthUs = restUs + outwardOf(side) * (endUs - holdInsideUs);
  await bench.steer(widthUs, 0.3);
  return [{ side, widthUs, stretch: await keepStretch(bench, 0.1, holdS) }];
}
/** As radio-range found it; asked where the radio of the car does not tell it. */
async function askRadio(bench: Bench): Promise<Evidence['radio']> {
  tell(bench, 6, "The radio's own per cent.");
  const width = (wheel: string) =>
    bench.askNumber(
      `What pulse did ${named('radio-range')} hear for the steering with the wheel ${wheel}, both end points at 100 %? 0: not known.`,
      { unit: 'us', min: 0, max: 2500 },
    );
  const leftUs = await width('fully left');
  if (leftUs === 0) return null;
  return { leftUs, centreUs: await width('at rest'), rightUs: await width('fully right') };
}
function tell(bench: SteeringBench, step: number, words: string): void {
  bench.progress({ step, of: stepsOfAll, words, leftS: Math.max(1, (stepsOfAll - step) * 6) });
}
