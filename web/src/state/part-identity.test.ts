// SPDX-License-Identifier: MIT
// A part keeps its history whatever it is called: trend, own limits, last verdict and its age, repairs; runs kept before
// there were identities take theirs by name, and only where one part has it.
import { describe, expect, it } from 'vitest';
import { checkById } from '#checks/index';
import { marmotCar } from '#core/parts/marmot-fixture';
import { carSchema, partRefOf, type Car } from '#core/parts/part';
import { addCar, fitPart, newShelf, takeOut, type ShelfContent } from '#core/parts/shelf';
import { identified, identifiedRun, knownParts, type RunOf } from '#core/parts/shelf-identity';
import { testRig } from '#core/samples/scan-block-fixture';
import { placeOfPart } from './chain-places.ts';
import { standing } from './chain-view.ts';
import {
  keptRecord,
  keptSummary,
  olderSummary,
  secondFormSummary,
  type KeptRun,
} from './kept-run-fixture.ts';
import { Logbook } from './logbook.svelte.ts';
import { overtakenBy } from './overtaken.ts';
import { runsOfChecks, runsOfPart } from './part-runs.ts';
import { partTrend, runCount, withBaseline } from './part-trend.ts';
import { Repairs } from './repairs.svelte.ts';
import { runSummarySchema } from './run-summary.ts';
import { Shelf } from './shelf.svelte.ts';

const key = 'motor-no-load/no-load-current';
const motorCheck = { id: 'motor-no-load', part: 'motor' } as const;
const day = 86_400_000;
function memory(first: Readonly<Record<string, unknown>> = {}) {
  const kept = new Map(Object.entries(first).map(([at, value]) => [at, JSON.stringify(value)]));
  return {
    getItem: (at: string) => kept.get(at) ?? null,
    setItem: (at: string, value: string) => void kept.set(at, value),
  };
}
const three = [3.0, 3.04, 2.98];
const runsOn = (car: Car): KeptRun[] => three.map((value, i) => ({ id: `run-${i}`, day: i + 1, value, car }));
/** A page on a database that holds these summaries; what it wrote stands in `written`. */
async function page(summaries: readonly unknown[], records: Readonly<Record<string, unknown>> = {}) {
  const written = new Map<string, unknown>();
  const drawer = {
    summaries: () => Promise.resolve([...summaries]),
    record: (id: string) => Promise.resolve(records[id]),
    put: (summary: { id: string }) => Promise.resolve(void written.set(summary.id, summary)),
    remove: () => Promise.resolve(),
  };
  const shelf = new Shelf(memory({ car: marmotCar }));
  const parts = () => shelf.known;
  const [logbook, repairs] = [new Logbook(drawer, parts), new Repairs(memory({ repairs: [repair] }), parts)];
  await logbook.load();
  return { logbook, shelf, repairs, written };
}
const repair = { partName: marmotCar.motor.name, at: '2026-10-01', words: 'new bearings' };
function told({ logbook, shelf, repairs }: Awaited<ReturnType<typeof page>>) {
  const part = partRefOf(shelf.car, 'motor');
  const runs = runsOfPart(logbook.runs, part, shelf.car);
  const trend = partTrend({ runs, part, key, repairs: repairs.of(part), car: shelf.car, holds: null });
  const facts = { runs: logbook.runs, checks: [motorCheck], car: shelf.car };
  const overtaken = overtakenBy({ car: shelf.car, repairs: repairs.list });
  const nowMs = Date.parse('2026-11-03T18:00:00Z') + day;
  const { verdict, age, detail } = standing(placeOfPart('motor'), { ...facts, nowMs, overtaken });
  return {
    runs: runCount(trend),
    since: trend.segments.at(-1)?.since?.words,
    kept: trend.kept?.words,
    standing: [verdict, age, detail],
    limit: checkById('motor-no-load')!.limits(shelf.car, testRig())['no-load-current'],
  };
}
/** Takes the offered limits and renames car and motor. */
async function renamed(at: Awaited<ReturnType<typeof page>>) {
  const part = partRefOf(at.shelf.car, 'motor');
  const runs = runsOfPart(at.logbook.runs, part, at.shelf.car);
  const { offer } = partTrend({ runs, part, key, repairs: [], car: at.shelf.car, holds: null });
  at.shelf.replace(withBaseline(at.shelf.car, offer!.baseline));
  const before = told(at);
  at.shelf.edit('motor.name', 'Slate Wren');
  at.shelf.edit('name', 'Marmot of the crew');
  return { before, after: told(at) };
}

describe('a part that is renamed', () => {
  it.each([
    ['today’s', (run: KeptRun) => keptSummary(run)],
    ['the second', (run: KeptRun) => secondFormSummary(run)],
    ['the first', (run: KeptRun) => olderSummary(run)],
  ])('keeps trend, own limits, verdict, age and repair over runs of %s form', async (_which, form) => {
    const runs = runsOn(marmotCar);
    const records = Object.fromEntries(runs.map((run) => [run.id!, keptRecord(run)]));
    const at = await page(runs.map(form), records);
    const { before, after } = await renamed(at);
    expect(before).toMatchObject({ runs: 3, since: 'new bearings' });
    expect(before.kept).toMatch(/^Own limits from 3 runs/);
    expect(before.limit.kind).toBe('baseline');
    expect(after).toEqual(before);
  });
  it('has given its old runs the identity in the database too', async () => {
    const at = await page(runsOn(marmotCar).map(secondFormSummary));
    const { partId } = partRefOf(at.shelf.car, 'motor');
    expect(partId).toBeTruthy();
    for (const kept of at.written.values())
      expect(runSummarySchema.parse(kept)).toMatchObject({ partId, carId: at.shelf.car.id, form: 3 });
    expect(at.written.size).toBe(3);
  });
  it('leaves its history with it where another part takes its old name', async () => {
    const at = await page(runsOn(marmotCar).map(secondFormSummary));
    at.shelf.edit('motor.name', 'Slate Wren');
    const spare = { ...marmotCar.motor };
    at.shelf.act((all) => addCar(all, { ...marmotCar, name: 'Vole', motor: spare }));
    const vole = at.shelf.content.cars.find(({ name }) => name === 'Vole')!;
    expect(runsOfChecks(at.logbook.runs, [motorCheck], vole)).toEqual([]);
    expect(runsOfChecks(at.logbook.runs, [motorCheck], at.shelf.car)).toHaveLength(3);
  });
});
describe('an identity', () => {
  let next = 0;
  const shelf = (content: ShelfContent) => identified(content, (what) => `${what} ${next++}`);
  const drive = { kind: 'drive', name: 'Long gears', pinionTeeth: 20, spurTeeth: 84 } as const;
  const gears = { ...drive, internalRatio: 2.6, tyreDiameterM: 0.083 };

  it('stays what it is once given, and is any text', () => {
    const named = { ...marmotCar, motor: { ...marmotCar.motor, id: 'Motor № 3 ⚙' } };
    const once = shelf(newShelf(carSchema.parse(named)));
    expect(once.cars[0].motor.id).toBe('Motor № 3 ⚙');
    expect(shelf(once)).toEqual(once);
  });
  it('of a part that nobody entered is that of the part once it is, and stays when the part goes elsewhere', () => {
    const bare = shelf(newShelf(marmotCar));
    const before = partRefOf(bare.cars[0], 'drive').partId;
    const entered = shelf({ ...bare, cars: [{ ...bare.cars[0], drive: gears }] });
    expect(entered.cars[0].drive?.id).toBe(before);
    const out = shelf(takeOut(entered, 'Marmot', 'drive'));
    expect(out.loose[0].part.id).toBe(before);
    expect(partRefOf(out.cars[0], 'drive').partId).not.toBe(before);
    expect(partRefOf(fitPart(out, 'Marmot', 'drive', 'Long gears').cars[0], 'drive').partId).toBe(before);
  });
  it('is not guessed where two parts have the name of an old run', () => {
    const [one, two] = ['Hare', 'Vole'].map((name) => ({ ...marmotCar, name }));
    const parts = knownParts(shelf({ ...newShelf(one), cars: [one, two] }));
    const run: RunOf = { part: 'motor', partName: marmotCar.motor.name, car: 'Gone' };
    expect(identifiedRun(run, parts, false)).toBe(run);
    expect(identifiedRun({ ...run, car: 'Vole' }, parts, false).partId).toBe(parts[7].partId);
  });
  it('of the car that a seed draws is the same the next time, also after another seed', () => {
    const page = new Shelf(memory());
    const drawn = (seed: number) => ({ ...marmotCar, name: `Marmot no. ${seed}` });
    page.adopt(drawn(7));
    const before = page.car.motor.id;
    page.adopt(drawn(8));
    expect(page.car.motor.id).not.toBe(before);
    page.adopt(drawn(7));
    expect(page.car.motor.id).toBe(before);
    const older = { shelf: newShelf(drawn(7)), 'car that the virtual rig drew': drawn(7) };
    expect(new Shelf(memory(older)).car.motor.id, 'and where it was on the shelf before').toBe(before);
  });
});
