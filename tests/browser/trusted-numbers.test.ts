// SPDX-License-Identifier: MIT
// What makes numbers trustworthy on the page: one tap calibrated against the virtual person's meter and kept over a
// reload, a person's own limit with its unit as typed and the default back, own limits taken from three runs.
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { keptSummary } from '../../web/src/state/kept-run-fixture.ts';
import { carOnBench } from './kept-runs.ts';
import { builtPage, type BuiltPage } from './page-fixture.ts';
import { screenFaults } from './screen-faults.ts';

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

const seed = 7;
/** Three runs of the drawn car's motor, kept as the page keeps them. */
async function keepThreeRuns(page: Page): Promise<void> {
  const car = await carOnBench(page);
  const virtual = { seed, faults: {}, truth: {} };
  const runs = [3.0, 3.04, 2.98].map((value, i) =>
    keptSummary({ id: `r${i}`, day: i + 1, value, car, virtual }),
  );
  await page.evaluate(async (kept) => {
    const opening = indexedDB.open('bench-marshal');
    await new Promise((done) => (opening.onsuccess = done));
    const writing = opening.result.transaction('summaries', 'readwrite');
    for (const run of kept) writing.objectStore('summaries').put(run);
    await new Promise((done) => (writing.oncomplete = done));
    opening.result.close();
  }, runs);
}
async function takePoint(page: Page, jump?: string): Promise<void> {
  await page.getByRole('button', { name: 'It is set, go on' }).click();
  const field = page.getByLabel('Meter shows');
  await field.waitFor();
  if (jump !== undefined) {
    await field.fill(jump);
    await page.getByRole('button', { name: 'Take this point' }).click();
    expect(await page.getByRole('alert').innerText()).toMatch(/^Refused\. Rail voltage shows .* apart/);
    expect(await screenFaults(page), 'a point refused').toEqual([]);
  }
  await page.getByRole('button', { name: 'Read the virtual meter' }).click();
  await expect.poll(() => field.inputValue()).toMatch(/^\d\.\d+$/);
  await page.getByRole('button', { name: 'Take this point' }).click();
}
const openPart = async (page: Page, go: (place: string) => Promise<void>) => {
  await go('#/car/motor');
  await page.getByRole('region', { name: 'History' }).waitFor();
};

it('calibrates a tap, keeps an own limit and takes own limits from three runs', async () => {
  const startMs = Date.now();
  const { page, go, complaints } = await built.open(1280, 800);
  await page.getByRole('button', { name: 'Try it on the virtual rig' }).click();
  await page.getByRole('link', { name: 'Check the receiver rail' }).waitFor();
  await keepThreeRuns(page);

  await go('#/rig/calibrate');
  await page.getByRole('button', { name: 'This is my meter' }).click();
  await page.getByRole('checkbox', { name: /^Rail voltage/ }).check();
  expect(await screenFaults(page), 'choice').toEqual([]);
  await page.getByRole('button', { name: 'Calibrate rail voltage' }).click();
  await takePoint(page, '9.12');
  await takePoint(page);
  await page.getByRole('heading', { level: 1, name: 'One tap is calibrated' }).waitFor();
  expect(await page.getByText(/^Gain 1\.0\d+.±.0\.00\d/).count()).toBe(1);
  expect(await screenFaults(page), 'calibrated').toEqual([]);

  await page.reload();
  await page.getByText(/^1 of \d+ calibrated/).waitFor();
  expect(
    await page.getByRole('checkbox', { name: /^Rail voltage Calibrated.*with the meter; declared/ }).count(),
  ).toBe(1);

  await openPart(page, go);
  await page.getByRole('button', { name: 'Make them its own limits' }).click();
  await page.getByText(/^Own limits from 3 runs, 2026-11-01 to 2026-11-03/).waitFor();
  const limit = page.getByRole('region', { name: 'History' });
  const before = await limit.getByText('Rating of this part').innerText();
  await page.getByRole('button', { name: 'Set my own limit of No-load current' }).first().click();
  await page.getByLabel(/^At most/).fill('3300');
  await page.getByLabel('Why').fill('as my track wants it');
  await page.getByRole('button', { name: 'Keep my limit' }).click();
  expect(await page.getByRole('alert').innerText()).toMatch(/more than 30 times above the default/);
  expect(await screenFaults(page), 'own limit refused').toEqual([]);
  await page.getByLabel(/^At most/).fill('3300 mA');
  await page.getByRole('button', { name: 'Keep my limit' }).click();
  await limit.getByText('at most 3.3 A').waitFor();
  await limit.getByText(/^Default: /).waitFor();
  expect(await screenFaults(page), 'own limit').toEqual([]);

  await page.reload();
  await openPart(page, go);
  await page.getByText(/^Own limits from 3 runs/).waitFor();
  await page.getByRole('button', { name: 'Change my own limit of No-load current' }).first().click();
  await page.getByRole('button', { name: 'Take the default back' }).click();
  expect(await limit.getByText('Rating of this part').innerText()).toBe(before);
  process.stdout.write(
    `calibration, own limit and baseline: ${((Date.now() - startMs) / 1000).toFixed(0)} s\n`,
  );
  expect(complaints).toEqual([]);
  await page.context().close();
}, 600_000);
