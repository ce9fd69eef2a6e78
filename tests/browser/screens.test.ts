// SPDX-License-Identifier: MIT
// Every screen on a phone and one of each kind on a computer, without a run: axe in day and night colours, nothing
// sticking out, the heading in focus after a change of place, and on the fullest screens a walk by the Tab key alone.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { oneOfEach, screens, secondVisit } from './all-screens.ts';
import { keyFaults } from './key-walk.ts';
import { builtPage, type BuiltPage } from './page-fixture.ts';
import { screenFaults } from './screen-faults.ts';

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

/** Those with the most to press. */
const walked = ['car', 'shelf', 'rig', 'logbook/run-1', 'run/rail-sag'];

/** Home between phone and computer. */
async function drawnWithoutTags(page: Page): Promise<string[]> {
  await page.setViewportSize({ width: 860, height: 1100 });
  await page.getByRole('group', { name: 'Drawing of the chain' }).waitFor();
  return screenFaults(page);
}
describe.each([
  { width: 1280, height: 800, visited: oneOfEach },
  { width: 390, height: 844, visited: screens },
])('at $width x $height', ({ width, height, visited }) => {
  it('every screen keeps the rules, and is walked by keys', async () => {
    const opened = await built.open(width, height);
    const { page, go, complaints } = opened;
    await secondVisit(opened);
    const faults: string[] = [];
    for (const screen of visited) {
      await go(`#/${screen}`);
      await page
        .waitForFunction(() => document.activeElement?.tagName === 'H1', undefined, { timeout: 8_000 })
        .catch(() => faults.push(`${screen}: the heading has no focus`));
      for (const fault of await screenFaults(page)) faults.push(`${screen}: ${fault}`);
      if (walked.includes(screen))
        for (const fault of await keyFaults(page)) faults.push(`${screen}: ${fault}`);
    }
    await go('#/car');
    await page.getByRole('radio', { name: 'At race load' }).check();
    expect(
      await page.getByText('is not measured: "Joints and leads: what they cost" would tell.').count(),
    ).toBe(1);
    for (const fault of await screenFaults(page)) faults.push(`at race load: ${fault}`);
    if (width > 860) for (const fault of await drawnWithoutTags(page)) faults.push(`at 860 px: ${fault}`);
    await page.setViewportSize({ width, height });
    await go('#/rig');
    await page.getByRole('button', { name: 'Hide three and let me find them' }).click();
    await page.getByRole('checkbox', { name: 'Bad joint' }).check();
    for (const fault of await screenFaults(page)) faults.push(`hidden faults: ${fault}`);
    await page.getByRole('button', { name: 'Show the faults, 1 suspected' }).click();
    expect(
      await page
        .getByRole('list', { name: 'Hidden faults' })
        .getByText(/: (not )?found$/)
        .count(),
    ).toBe(3);
    for (const fault of await screenFaults(page)) faults.push(`hidden faults shown: ${fault}`);
    expect(faults).toEqual([]);
    expect(complaints).toEqual([]);
    await page.context().close();
  }, 600_000);
});
