// SPDX-License-Identifier: MIT
// The logbook in Chromium: a database of the first form and its cars are brought up to date, a note stays, two runs are
// compared, one is deleted and put back, a motor keeps its history under another name, everything goes to a file and
// into a fresh profile, once only. No rig is needed.
import { readFileSync } from 'node:fs';
import { strFromU8, unzipSync } from 'fflate';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { carOnBench, shelfSchema } from '#core/parts/shelf';
import { brushShown, clearByKeys } from './chart-keys.ts';
import { keptNow, leaveFirstForm, oldCar } from './old-database.ts';
import { builtPage, type BuiltPage } from './page-fixture.ts';
import { screenFaults } from './screen-faults.ts';

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

const rows = (page: Page) => page.getByRole('region', { name: 'Runs' }).locator('tbody tr');
const compareBox = (page: Page, at: number) => rows(page).nth(at).getByRole('button');

/** Cars are in the database too now, and the runs of then have the identity of their motor. */
async function movedAndKnown(page: Page): Promise<void> {
  const { version, stores, shelf, summaries } = await keptNow(page);
  expect([version, stores]).toEqual([3, ['bench', 'journal', 'journalParts', 'records', 'summaries']]);
  const { name, motor } = carOnBench(shelfSchema.parse(JSON.parse(shelf)));
  expect([name, motor.name, typeof motor.id]).toEqual([oldCar.name, oldCar.motor.name, 'string']);
  expect(summaries.map(({ partId }) => partId)).toEqual([motor.id, motor.id]);
}
async function renamedMotor(page: Page, go: (place: string) => Promise<void>): Promise<void> {
  await go('#/shelf');
  const motor = page.getByRole('region', { name: 'Motor' });
  await motor.getByRole('textbox', { name: 'Name', exact: true }).fill('Slate Wren');
  await motor.getByRole('textbox', { name: 'Name', exact: true }).press('Tab');
  await go('#/car/motor');
  await page.getByRole('region', { name: 'Last runs' }).locator('tbody tr').nth(1).waitFor();
}
async function noteAndPutBack(page: Page): Promise<void> {
  await rows(page).first().getByRole('link').click();
  await page.getByLabel('Note').fill('after new bearings');
  await page.getByRole('button', { name: 'Delete this run' }).click();
  await page.getByText('This run is deleted.').waitFor();
  expect(await screenFaults(page), 'deleted record').toEqual([]);
  await page.getByRole('link', { name: 'Logbook' }).first().click();
  await page.getByRole('button', { name: /^Put back/ }).waitFor();
  expect(await rows(page).count()).toBe(1);
  await page.getByRole('button', { name: /^Put back/ }).click();
  await rows(page).nth(1).waitFor();
}
async function compareBoth(page: Page): Promise<void> {
  for (const at of [0, 1]) await compareBox(page, at).click();
  const comparison = page.getByRole('region', { name: 'Comparison' });
  await comparison.getByRole('img', { name: /of A, B over the seconds/ }).waitFor();
  expect(await comparison.innerText()).toMatch(/B − A\s*−0\.200\s±\s0\.029\sA[\s\S]*it is a real difference/);
  expect(await brushShown(page)).toMatch(/\nA\nmean \S+\sA[\s\S]*\nB\nmean \S+\sA/);
  expect(await screenFaults(page), 'comparison').toEqual([]);
  await clearByKeys(page);
}
/** A second car and a spare from classes, the spare fitted there: the rest of the page is about that car then. */
async function secondCar(page: Page): Promise<void> {
  const [what, add] = [
    page.getByLabel('What it is'),
    page.getByRole('button', { name: 'Add it to the shelf' }),
  ];
  await what.selectOption('guestTruck');
  await page.getByLabel('Its name').fill('Quarry Vole');
  await add.click();
  await page.getByRole('button', { name: 'Put on the bench: Quarry Vole' }).click();
  await what.selectOption('clubMotor');
  await page.getByLabel('Its name').fill('Spare Wren');
  await add.click();
  await page.getByText('Change the motor').click();
  await page.getByRole('button', { name: /^Fit Spare Wren, lay / }).click();
  await page.getByRole('heading', { level: 1, name: 'Quarry Vole is on the bench' }).waitFor();
  await page.getByRole('button', { name: 'Car Quarry Vole, list of cars' }).first().waitFor();
  expect(await page.getByRole('textbox', { name: 'Name', exact: true }).first().inputValue()).toBe(
    'Spare Wren',
  );
  expect(await screenFaults(page), 'shelf of two cars').toEqual([]);
}
async function saved(page: Page): Promise<Buffer> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the whole logbook' }).click(),
  ]);
  return readFileSync(await download.path());
}
const openFile = (page: Page, name: string, buffer: Buffer) =>
  page.getByLabel('File of a saved record').setInputFiles({ name, mimeType: 'application/zip', buffer });

/** From a database of the first form to a file of everything. */
async function keptAndSaved(width: number, height: number): Promise<Buffer> {
  const { page, go, complaints } = await built.open(width, height);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await leaveFirstForm(page);
  await page.reload();
  await go('#/logbook');
  await rows(page).nth(1).waitFor();
  await movedAndKnown(page);
  await noteAndPutBack(page);
  await compareBoth(page);
  await renamedMotor(page, go);
  await go('#/shelf');
  await secondCar(page);
  await go('#/logbook');
  const file = await saved(page);
  expect(JSON.parse(strFromU8(unzipSync(file)['notes.json']))).toEqual({ b: 'after new bearings' });
  expect(complaints).toEqual([]);
  await page.context().close();
  return file;
}
/** Into a fresh profile, once only. */
async function openedAnew(file: Buffer, width: number, height: number): Promise<void> {
  const { page, go, complaints } = await built.open(width, height);
  await go('#/logbook');
  await openFile(page, 'torn.zip', file.subarray(0, file.length / 2));
  expect(await page.getByRole('alert').innerText()).toContain('it was cut off or damaged');
  await openFile(page, 'all.zip', file);
  await page.getByText('2 runs that this logbook does not have').waitFor();
  expect(await screenFaults(page), 'preview').toEqual([]);
  await page.getByRole('button', { name: 'Add to the logbook' }).click();
  await rows(page).nth(1).waitFor();
  await page.reload();
  await rows(page).filter({ hasText: 'after new bearings' }).waitFor();
  await openFile(page, 'all.zip', file);
  await page.getByText('2 runs that are here already').waitFor();
  expect(await page.getByRole('button', { name: 'Add to the logbook' }).count()).toBe(0);
  await page.getByRole('button', { name: 'Add nothing' }).click();
  expect(await rows(page).count()).toBe(2);
  await go('#/shelf');
  await page.getByRole('heading', { level: 1, name: 'Quarry Vole is on the bench' }).waitFor();
  expect(complaints).toEqual([]);
  await page.context().close();
}
it('keeps, compares and saves runs on a computer, and opens them on a phone', async () => {
  await openedAnew(await keptAndSaved(1280, 800), 390, 844);
}, 300_000);
it('keeps, compares and saves runs on a phone', async () => {
  expect((await keptAndSaved(390, 844)).length).toBeGreaterThan(0);
}, 300_000);
