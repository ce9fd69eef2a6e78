// SPDX-License-Identifier: MIT
// A plan on the page, in real Chromium on the compiled firmware: looks ticked, checks run from the plan, a reload in
// the middle, the sentence at the end.
import { afterAll, beforeAll, expect, it } from 'vitest';
import { builtPage, type BuiltPage } from './page-fixture.ts';
import { doNext, sentenceOf, startPlan } from './plan-walk.ts';
import { screenFaults } from './screen-faults.ts';

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

const title = 'Between rounds';
it('leads through the items between rounds and goes on after a reload', async () => {
  const { page, go, complaints } = await built.open(1280, 800);
  await page.getByRole('button', { name: 'Try it on the virtual rig' }).click();
  await page.getByRole('link', { name: 'Check the receiver rail' }).waitFor();
  await go('#/plans');
  await startPlan(page, title);
  expect(await screenFaults(page), 'plan under way').toEqual([]);
  await doNext(page, title);
  await page.reload();
  await page.getByText('1 of 4 done').waitFor();
  while (await doNext(page, title));
  expect(await sentenceOf(page)).toBe('Ready: all 4 items passed.');
  const items = page.getByRole('region', { name: 'Items' });
  expect(await items.getByText('Pass', { exact: true }).count()).toBe(4);
  expect(await items.getByRole('link', { name: 'Open its record' }).count()).toBe(3);
  expect(await screenFaults(page), 'plan at its end').toEqual([]);
  expect(complaints).toEqual([]);
  await page.context().close();
}, 600_000);
