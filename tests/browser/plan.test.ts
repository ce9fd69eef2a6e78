// SPDX-License-Identifier: MIT
// A plan on the page, in real Chromium on the compiled firmware: looks ticked, checks run from the plan, a reload in
// the middle, the sentence at the end.
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { holdToGoLive, untilEnded } from './bench-hands.ts';
import { builtPage, type BuiltPage } from './page-fixture.ts';
import { screenFaults } from './screen-faults.ts';

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

const next = (page: Page) => page.getByRole('region', { name: 'Next' });
/** Runs what the plan asks for and comes back to it. */
async function runNext(page: Page): Promise<void> {
  await next(page).getByRole('link', { name: /^Run / }).click();
  await holdToGoLive(page);
  await untilEnded(page);
  await page.getByRole('link', { name: 'Go on with Between rounds' }).click();
  await page.getByRole('heading', { level: 1, name: 'Between rounds' }).waitFor();
}
it('leads through the items between rounds and goes on after a reload', async () => {
  const { page, go, complaints } = await built.open(1280, 800);
  await page.getByRole('button', { name: 'Try it on the virtual rig' }).click();
  await page.getByRole('link', { name: 'Check the receiver rail' }).waitFor();
  await go('#/plans');
  await page.getByRole('link', { name: 'Open Between rounds' }).click();
  await page.getByRole('button', { name: 'Start Between rounds' }).click();
  const looks = next(page).getByRole('button', { name: 'Fine', exact: true });
  await next(page).waitFor();
  expect(await screenFaults(page), 'plan under way').toEqual([]);
  let reloaded = false;
  while (await next(page).isVisible()) {
    if (await looks.isVisible()) await looks.click();
    else await runNext(page);
    if (reloaded) continue;
    reloaded = true;
    await page.reload();
    await page.getByText('1 of 4 done').waitFor();
  }
  const sentence = page.getByText(/^(Ready|Not ready|Not settled): /);
  expect(await sentence.innerText()).toBe('Ready: all 4 items passed.');
  const items = page.getByRole('region', { name: 'Items' });
  expect(await items.getByText('Pass', { exact: true }).count()).toBe(4);
  expect(await items.getByRole('link', { name: 'Open its record' }).count()).toBe(3);
  expect(await screenFaults(page), 'plan at its end').toEqual([]);
  expect(complaints).toEqual([]);
  await page.context().close();
}, 600_000);
