// SPDX-License-Identifier: MIT
// Whatever takes the run out of a person's hands must stop the rig, keep the record and say so: stop by button and
// keys, a frozen or hidden page, a pulled cable. The rig runs in real time where the wall clock matters.
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { alertOf, holdToGoLive, tryVirtualRig, untilEnded, untilStep, verdictOf } from './bench-hands.ts';
import { builtPage, pullCable, type BuiltPage } from './page-fixture.ts';
import { screenFaults } from './screen-faults.ts';

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

const forLong = 900_000;
const byButton = (page: Page) =>
  page.getByRole('button', { name: 'Stop', exact: true }).dispatchEvent('pointerdown');
const ways: readonly (readonly [string, (page: Page) => Promise<void>])[] = [
  ['Escape', (page) => page.keyboard.press('Escape')],
  ['the space bar', (page) => page.keyboard.press(' ')],
  ['the button', byButton],
];
async function notMeasured(page: Page, words: RegExp): Promise<void> {
  await untilEnded(page);
  expect(await alertOf(page).innerText()).toMatch(words);
  expect(await verdictOf(page).innerText()).toContain('Not measured');
  expect(await screenFaults(page), String(words)).toEqual([]);
}
it(
  'ends a run by Escape, space and button, and keeps each record',
  async () => {
    const { page, go, complaints } = await built.open(1280, 800);
    await tryVirtualRig(page);
    for (const [, stop] of ways) {
      await holdToGoLive(page);
      await untilStep(page, /^Neutral/);
      await stop(page);
      await notMeasured(page, /^Stopped[\s\S]*by hand/);
      await page.getByRole('button', { name: 'Run it again' }).click();
    }
    await go('#/logbook');
    await page
      .locator('tbody tr')
      .nth(ways.length - 1)
      .waitFor();
    expect(complaints).toEqual([]);
    await page.context().close();
  },
  forLong,
);
it(
  'stops a running motor when the main thread is frozen, and says why afterwards',
  async () => {
    const { page, go } = await built.open(1280, 800, 1);
    await tryVirtualRig(page);
    await go('#/run/motor-no-load');
    await holdToGoLive(page);
    await untilStep(page, /^Warming up at half throttle/);
    await page.evaluate(() => {
      const endMs = performance.now() + 4000;
      while (performance.now() < endMs);
    });
    await notMeasured(page, /Tripped, everything off[\s\S]*fell silent/);
    await page.getByRole('button', { name: 'I found it, clear the trip' }).click();
    await page.getByRole('button', { name: 'I found it, clear the trip' }).waitFor({ state: 'detached' });
    expect(await page.locator('.well.live').count(), 'nothing is live').toBe(0);
    await page.context().close();
  },
  forLong,
);
it(
  'stops when the page is hidden, and says why',
  async () => {
    const { page, complaints } = await built.open(1280, 800);
    await tryVirtualRig(page);
    await holdToGoLive(page);
    await untilStep(page, /^Neutral/);
    // A headless Chromium never hides a page: it is told so in the way a browser tells it.
    await page.evaluate(() => {
      Object.defineProperty(document, 'hidden', { configurable: true, get: () => true });
      document.dispatchEvent(new Event('visibilitychange'));
    });
    await notMeasured(page, /^Stopped[\s\S]*The page was hidden/);
    expect(complaints).toEqual([]);
    await page.context().close();
  },
  forLong,
);
it(
  'keeps the record when the cable is pulled in a run, says what to do, and goes on with the rig plugged in again',
  async () => {
    const { page, complaints } = await built.open(390, 844);
    await tryVirtualRig(page);
    await holdToGoLive(page);
    await untilStep(page, /^Neutral/);
    await pullCable(page);
    await notMeasured(page, /^Link lost[\s\S]*disconnect the pack[\s\S]*kept/);
    await page.getByRole('button', { name: 'Run it again' }).click();
    await page.getByRole('button', { name: 'Start the virtual rig' }).click();
    await holdToGoLive(page);
    await byButton(page);
    await notMeasured(page, /^Stopped/);
    expect(complaints).toEqual([]);
    await page.context().close();
  },
  forLong,
);
it(
  'keeps what was written of a run when the page goes away in it',
  async () => {
    const { page, go, complaints } = await built.open(1280, 800);
    await tryVirtualRig(page);
    await holdToGoLive(page);
    await untilStep(page, /^Load steps/);
    await page.reload();
    await go('#/logbook');
    await page.locator('tbody tr a').first().click();
    await page.getByText('The page went away while the check ran').first().waitFor();
    expect(await verdictOf(page).innerText()).toContain('Not measured');
    expect(complaints).toEqual([]);
    await page.context().close();
  },
  forLong,
);
it('gives words for a file that is no record', async () => {
  const { page } = await built.open(1280, 800);
  const file = {
    name: 'record.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{"format":"soup"}'),
  };
  await page.getByLabel('File of a saved record').setInputFiles(file);
  expect(await alertOf(page).innerText()).toContain('not a run record of this bench');
  await page.context().close();
});
