// SPDX-License-Identifier: MIT
// What a person does on a first visit, in real Chromium with the built page and the virtual rig on the compiled
// firmware: each check to a verdict, the records after a reload, every screen by axe in day and night colours.
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { recordSchema } from '#core/record/run-record';
import { alertOf, holdToGoLive, tryVirtualRig, untilEnded, verdictOf } from './bench-hands.ts';
import { brushByKeys, clearByKeys } from './chart-keys.ts';
import { builtPage, type BuiltPage } from './page-fixture.ts';
import { screenFaults } from './screen-faults.ts';
import { watchSpeed } from './rig-speed.ts';

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

const words = /^(Pass|Fail|Undecided|Not measured)$/;
const places = ['car', 'car/motor', 'plans', 'logbook', 'shelf', 'rig', 'rig/calibrate', 'run/motor-no-load'];
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
  const speed = await watchSpeed(page);
  await untilEnded(page);
  say(`${check}: ${await speed()}`);
  expect(await alertOf(page).allInnerTexts(), `${check} was cut short`).toEqual([]);
  expect(await verdictOf(page).getByText(words).first().innerText()).toMatch(words);
  expect(await verdictOf(page).getByRole('img').count(), `${check}: its picture`).toBeGreaterThan(0);
  expect(await screenFaults(page), `${check}, verdict`).toEqual([]);
}

describe.each([
  { width: 1280, height: 800, checks: ['rail-sag', 'servo-stall', 'motor-no-load'] },
  { width: 390, height: 844, checks: ['rail-sag'] },
])('at $width x $height', ({ width, height, checks }) => {
  it('goes from a first visit to verdicts, and finds the records after a reload', async () => {
    const startMs = Date.now();
    const { page, go, complaints } = await built.open(width, height);
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe('Is this car fit to race?');
    expect(await screenFaults(page), 'welcome').toEqual([]);
    await tryVirtualRig(page);
    for (const [index, check] of checks.entries()) {
      if (index > 0) await go(`#/run/${check}`);
      await toVerdict(page, check);
      if (index === 0)
        say(`first verdict ${((Date.now() - startMs) / 1000).toFixed(0)} s after opening at ${width} px`);
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
    for (const place of places) {
      await go(`#/${place}`);
      expect(await screenFaults(page), place).toEqual([]);
    }
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 1_200_000);
});
