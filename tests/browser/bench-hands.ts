// SPDX-License-Identifier: MIT
// The steps of a person through a run, by role and label: tick, hold to go live, do what is asked, wait.
import type { Page } from 'playwright-core';

/** Called at every screen where a person would stop and read, with what it is. */
export type Look = (screen: string) => Promise<void>;
const passBy: Look = async () => {};
const charts = (page: Page) => page.getByRole('region', { name: 'Charts' });
export const alertOf = (page: Page) => page.getByRole('alert');
export const verdictOf = (page: Page) => page.getByRole('region', { name: 'Verdict' });

/** From the welcome to a check's stations, as a first visitor. */
export async function tryVirtualRig(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Try it on the virtual rig' }).click();
  await page.getByRole('link', { name: 'Check the receiver rail' }).click();
}
/** A hold let go because a tap was not seen for a moment is held again, as a person would. */
export async function holdToGoLive(page: Page, look = passBy): Promise<void> {
  await page.getByRole('heading', { name: 'Wire it like this' }).waitFor();
  await page.getByRole('checkbox').first().waitFor();
  for (const box of await page.getByRole('checkbox').all()) await box.check();
  await look('ready');
  const hold = page.getByRole('button', { name: /Hold to go live|Held too short/ });
  while (!(await charts(page).isVisible())) {
    await hold.and(page.locator(':not([aria-disabled])')).hover();
    await page.mouse.down();
    await charts(page)
      .waitFor({ timeout: 5000 })
      .catch(() => {});
    await page.mouse.up();
  }
}
/** Waits for a step of the run, doing what is asked at the bench. */
export const untilStep = (page: Page, words: RegExp): Promise<void> =>
  withHands(page, () => page.getByRole('heading', { level: 1, name: words }).isVisible());
export const untilEnded = (page: Page, look = passBy): Promise<void> =>
  withHands(page, () => page.getByRole('link', { name: 'Done, back to the car' }).isVisible(), look);

async function withHands(page: Page, over: () => Promise<boolean>, look = passBy): Promise<void> {
  const asked = page.getByRole('button', {
    name: /^(It is done, go on|Let the person at the virtual bench read it)$/,
  });
  while (!(await over())) {
    if (await asked.isVisible()) {
      await look('asked');
      await asked.click({ timeout: 2000 }).catch(() => {});
    }
    await page.waitForTimeout(100);
  }
}
