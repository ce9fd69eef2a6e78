// SPDX-License-Identifier: MIT
// What a person does on a first visit, in real Chromium with the built page and the virtual rig on the compiled
// firmware: each check to a verdict, the records after a reload, the screens by axe (WCAG 2.2 A and AA).
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { broken, builtPage, holdToGoLive, overflows, untilVerdict, type BuiltPage } from './page-fixture.ts';

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

const words = /^(Pass|Fail|Undecided|Not measured)$/;
const screens = ['#/car', '#/car/motor', '#/plans', '#/logbook', '#/shelf', '#/rig', '#/run/motor-no-load'];

describe.each([
  { width: 1280, height: 800, checks: ['rail-sag', 'servo-stall', 'motor-no-load'] },
  { width: 390, height: 844, checks: ['rail-sag'] },
])('at $width x $height', ({ width, height, checks }) => {
  it('goes from a first visit to a verdict, and finds the records after a reload', async () => {
    const { page, complaints } = await built.open(width, height);
    const startMs = Date.now();
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe('Is this car fit to race?');
    expect(await broken(page)).toEqual([]);
    await page.getByRole('button', { name: 'Try it on the virtual rig' }).click();
    await page.getByRole('link', { name: 'Check the receiver rail' }).click();
    for (const check of checks) {
      await page.goto(`${built.address}#/run/${check}`);
      await holdToGoLive(page);
      await untilVerdict(page);
      const verdict = page.getByRole('region', { name: 'Verdict' });
      if (check === checks[0])
        process.stdout.write(
          `first verdict after ${((Date.now() - startMs) / 1000).toFixed(0)} s at ${width} px\n`,
        );
      expect(await verdict.getByText(words).first().innerText()).toMatch(words);
      const cut = await page.getByRole('alert').allInnerTexts();
      expect(cut, `${check} was cut short`).toEqual([]);
      expect(await verdict.getByRole('img').count(), `${check}: its picture`).toBeGreaterThan(0);
      expect(await broken(page), `${check}, verdict`).toEqual([]);
      expect(await overflows(page), `${check}, verdict sticks out`).toBe(false);
      await page.getByRole('link', { name: 'Done, back to the car' }).click();
    }
    await page.goto(`${built.address}#/logbook`);
    await page.reload();
    await page.locator('tbody tr').first().waitFor();
    expect(await page.locator('tbody tr').count()).toBe(checks.length);
    await page.locator('tbody').getByRole('link').first().click();
    await page.getByRole('heading', { name: 'How this number was made' }).waitFor();
    await page
      .getByRole('img', { name: /^[A-Z].* over \d+ s: from/ })
      .first()
      .waitFor();
    expect(await broken(page), 'record').toEqual([]);
    for (const screen of screens) {
      await page.goto(`${built.address}${screen}`);
      await page.getByRole('heading', { level: 1 }).waitFor();
      expect(await broken(page), screen).toEqual([]);
      expect(await overflows(page), `${screen} sticks out`).toBe(false);
    }
    expect(complaints).toEqual([]);
    await page.context().close();
  });
});
