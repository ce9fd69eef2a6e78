// SPDX-License-Identifier: MIT
// A person at the charts without a mouse: looks closer, brushes a stretch, moves its edges, reads what it amounts to.
import { expect } from 'vitest';
import type { Page } from 'playwright-core';

const plots = (page: Page) => page.getByRole('group', { name: /^Charts (over time|of the compared runs)$/ });
const edge = (page: Page, name: RegExp) => page.getByRole('slider', { name });
const secondOf = async (page: Page, name: RegExp) =>
  Number(await edge(page, name).getAttribute('aria-valuenow'));
export const measuredOf = (page: Page) => page.getByRole('region', { name: 'Measured' });

/** By keys alone; the brush stays. Resolves with the lines of what is measured. */
export async function brushByKeys(page: Page): Promise<string> {
  await plots(page).focus();
  await page.keyboard.press('+');
  await page.getByRole('button', { name: 'Show all' }).waitFor();
  return brushShown(page);
}
/** In what is shown. */
export async function brushShown(page: Page): Promise<string> {
  await plots(page).focus();
  await page.keyboard.press('b');
  await edge(page, /^Beginning/)
    .and(page.locator(':focus'))
    .waitFor();
  const [fromS, toS] = [await secondOf(page, /^Beginning/), await secondOf(page, /^End/)];
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Tab');
  await page.keyboard.press('ArrowRight');
  expect(await secondOf(page, /^Beginning/), 'beginning moved left').toBeLessThan(fromS);
  expect(await secondOf(page, /^End/), 'end moved right').toBeGreaterThan(toS);
  return measuredOf(page).innerText();
}
/** Escape clears the brush, 0 shows all again. */
export async function clearByKeys(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await measuredOf(page).waitFor({ state: 'detached' });
  await plots(page).focus();
  await page.keyboard.press('0');
  await page.getByRole('button', { name: 'Show all' }).waitFor({ state: 'detached' });
}
