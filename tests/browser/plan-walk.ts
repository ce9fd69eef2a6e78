// SPDX-License-Identifier: MIT
// The steps of a person through a plan: open it, start it, look and tick, run what comes next, until its sentence.
import type { Page } from 'playwright-core';
import { holdToGoLive, untilEnded, type Look } from './bench-hands.ts';

const next = (page: Page) => page.getByRole('region', { name: 'Next' });
const titled = (page: Page, title: string) => page.getByRole('heading', { level: 1, name: title });

export async function startPlan(page: Page, title: string): Promise<void> {
  await page.getByRole('link', { name: `Open ${title}`, exact: true }).click();
  await page.getByRole('button', { name: `Start ${title}` }).click();
  await next(page).waitFor();
}
/** Does what the plan asks for next, everything looked at being fine; false when nothing is left. */
export async function doNext(page: Page, title: string, look: Look = async () => {}): Promise<boolean> {
  await titled(page, title).waitFor();
  if (!(await next(page).isVisible())) return false;
  await look('plan');
  const fine = next(page).getByRole('button', { name: 'Fine', exact: true });
  if (await fine.isVisible()) await fine.click();
  else await runNext(page, title, look);
  return true;
}
async function runNext(page: Page, title: string, look: Look): Promise<void> {
  await next(page).getByRole('link', { name: /^Run / }).click();
  await holdToGoLive(page, look);
  await look('live');
  await untilEnded(page, look);
  await look('ended');
  await clearTrip(page);
  await page.getByRole('link', { name: `Go on with ${title}` }).click();
}
/** A computer that can't keep up trips the rig; the plan goes on, and its sentence says so. */
async function clearTrip(page: Page): Promise<void> {
  const clear = page.getByRole('button', { name: 'I found it, clear the trip' });
  if (!(await clear.isVisible())) return;
  await clear.click();
  await clear.waitFor({ state: 'detached' });
}
export const sentenceOf = (page: Page): Promise<string> =>
  page.getByText(/^(Ready|Not ready|Not settled): /).innerText();
