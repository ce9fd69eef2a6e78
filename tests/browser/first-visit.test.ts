// SPDX-License-Identifier: MIT
// What a person does on a first visit, in real Chromium with the built page and the virtual rig on the compiled
// firmware: each check to a verdict, the records after a reload, every screen by axe in day and night colours.
import { appendFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { recordSchema } from '#core/record/run-record';
import { alertOf, holdToGoLive, tryVirtualRig, untilEnded, verdictOf } from './bench-hands.ts';
import { brushByKeys, clearByKeys } from './chart-keys.ts';
import { weigh } from './first-load.ts';
import { builtPage, type BuiltPage, type OpenPage } from './page-fixture.ts';
import { watchPresses } from './presses.ts';
import { screenFaults, smallTargets } from './screen-faults.ts';
import { watchSpeed } from './rig-speed.ts';

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

const words = /^(Pass|Fail|Undecided|Not measured)$/;
const firstLoadLimitBytes = 150_000;
const clicksToVerdict = 4;
const say = (line: string) => process.stdout.write(`${line}\n`);

/** A record as a person saves it. */
async function savedRecord(page: Page) {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as a file' }).click(),
  ]);
  return recordSchema.parse(JSON.parse(readFileSync(await download.path(), 'utf8')));
}
/** While the check waits for a hand: the picture held, a stretch brushed by keys, then on where live is. */
async function brushWhileLive(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'It is done, go on' }).waitFor();
  await page.getByRole('button', { name: 'Hold the picture' }).press('Enter');
  await page.getByText(/^Held at/).waitFor();
  expect(await brushByKeys(page)).toContain('brushed');
  expect(await screenFaults(page), 'brushed while live').toEqual([]);
  await page.getByRole('button', { name: 'Clear the brush' }).press('Enter');
  await page.keyboard.press('h');
  await page.getByText(/^Held at/).waitFor({ state: 'detached' });
}
async function toVerdict(page: Page, check: string): Promise<void> {
  await holdToGoLive(page);
  if (check === 'servo-stall') await brushWhileLive(page);
  expect(await smallTargets(page), 'targets while a run is on').toEqual([]);
  const speed = await watchSpeed(page);
  await untilEnded(page);
  say(`${check}: ${await speed()}`);
  expect(await alertOf(page).allInnerTexts(), `${check} was cut short`).toEqual([]);
  expect(await verdictOf(page).getByText(words).first().innerText()).toMatch(words);
  expect(await verdictOf(page).getByRole('img').count(), `${check}: its picture`).toBeGreaterThan(0);
  expect(await screenFaults(page), `${check}, verdict`).toEqual([]);
}

/** The built files of the first screen, before the virtual rig and the charts are needed; 1 kB is 1000 bytes. */
async function weighFirstLoad({ page, fetched }: OpenPage): Promise<void> {
  await page.waitForLoadState('networkidle');
  const files = await weigh(fetched);
  const all = files.reduce((sum, { gzippedBytes }) => sum + gzippedBytes, 0);
  say(`first load ${(all / 1000).toFixed(1)} kB gzipped in ${files.length} files`);
  const list = files.map(({ file, gzippedBytes }) => `${gzippedBytes} ${file}`).join('\n');
  expect(files.length).toBeGreaterThan(3);
  expect(all, list).toBeLessThanOrEqual(firstLoadLimitBytes);
}
/** The page comes back from this computer alone. */
async function endServer(page: Page): Promise<void> {
  await page.evaluate(() => navigator.serviceWorker.ready);
  await built.endServing();
  await page.reload();
  await page.getByRole('heading', { level: 1 }).waitFor();
}

describe.each([
  { width: 1280, height: 800, checks: ['rail-sag', 'servo-stall', 'motor-no-load'], offline: false },
  { width: 390, height: 844, checks: ['rail-sag'], offline: true },
])('at $width x $height', ({ width, height, checks, offline }) => {
  it(`goes from a first visit to verdicts${offline ? ' with the server ended' : ''}, and finds the records after a reload`, async () => {
    const startMs = Date.now();
    const opened = await built.open(width, height);
    const { page, go, complaints } = opened;
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe('Is this car fit to race?');
    expect(await screenFaults(page), 'welcome').toEqual([]);
    await weighFirstLoad(opened);
    if (offline) await endServer(page);
    const presses = await watchPresses(page);
    await tryVirtualRig(page);
    for (const [index, check] of checks.entries()) {
      if (index > 0) await go(`#/run/${check}`);
      await toVerdict(page, check);
      if (index === 0) {
        const took = ((Date.now() - startMs) / 1000).toFixed(0);
        const pressed = await presses();
        say(
          `first verdict ${took} s after opening at ${width} px, by ${pressed.length} clicks: ${pressed.join('; ')}`,
        );
        expect(pressed.length).toBeLessThanOrEqual(clicksToVerdict);
      }
      const { virtual, software } = await savedRecord(page);
      expect(software.tool).toBe('page');
      expect(virtual, 'what the command line keeps too').toMatchObject({ seed: 7, faults: {} });
      expect(Object.values(virtual!.truth).some((value) => value !== 0)).toBe(true);
      await page.getByRole('link', { name: 'Done, back to the car' }).click();
    }
    await go('#/logbook');
    await page.reload();
    await page
      .locator('tbody tr')
      .nth(checks.length - 1)
      .waitFor();
    expect(await page.locator('tbody tr').count()).toBe(checks.length);
    await page.locator('tbody').getByRole('link').first().click();
    await page.getByRole('heading', { name: 'How this number was made' }).waitFor();
    const chart = page.getByRole('img', { name: /^[A-Z].* over \d+ s: from/ });
    await chart.first().waitFor();
    expect(await brushByKeys(page)).toMatch(
      /brushed[\s\S]*mean \S+\s(V|A|rpm)\s+peak to peak .*\s+rms about the mean .*\s+slope \S+\s\S+\/s/,
    );
    expect(await screenFaults(page), 'record').toEqual([]);
    await clearByKeys(page);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 1_200_000);
});

it('tells of a newer version and changes to it only when asked', async () => {
  const { page, go, complaints } = await built.open(1280, 800);
  await page.evaluate(() => navigator.serviceWorker.ready);
  expect(await page.getByText('A newer version').count()).toBe(0);
  appendFileSync(join(built.folder, 'service-worker.js'), '\n// newer');
  await page.evaluate(() => Object.assign(globalThis, { before: true }));
  await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
  await page.getByText('A newer version of this page is ready.').waitFor();
  expect(await screenFaults(page), 'newer version').toEqual([]);
  await go('#/run/rail-sag');
  expect(await page.getByText('A newer version').count(), 'none is offered at a run').toBe(0);
  await go('#/car');
  expect(await page.evaluate(() => 'before' in globalThis), 'nothing reloads unasked').toBe(true);
  await page.getByRole('button', { name: 'Change to the newer version' }).click();
  await page.waitForFunction(() => !('before' in globalThis));
  await page.getByRole('heading', { level: 1 }).waitFor();
  expect(await page.getByText('A newer version').count()).toBe(0);
  expect(complaints).toEqual([]);
  await page.context().close();
}, 300_000);
