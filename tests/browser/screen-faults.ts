// SPDX-License-Identifier: MIT
// What is wrong with a screen as it stands, by axe's rules for WCAG 2.2 A and AA in day and night colours, and
// what sticks out of it; targets too small for a run. It clicks nothing.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
type Found = { id: string; nodes: { html: string }[] };
type Axe = { run(at: Document, options: object): Promise<{ violations: Found[] }> };

const looks = [
  /** Only contrast hangs on the colours. */
  { colorScheme: 'dark', rules: { type: 'rule', values: ['color-contrast'] } },
  {
    colorScheme: 'light',
    rules: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] },
  },
] as const;
/** One line for every fault, empty when there is none. */
export async function screenFaults(page: Page): Promise<string[]> {
  const faults: string[] = [];
  for (const { colorScheme, rules } of looks) {
    await page.emulateMedia({ colorScheme });
    for (const line of await rulesBroken(page, rules)) faults.push(`${colorScheme}: ${line}`);
  }
  return (await sticksOut(page)) ? [...faults, 'sticks out at the side'] : faults;
}
/** The rules broken, with the first element of each. */
async function rulesBroken(page: Page, rules: object): Promise<string[]> {
  if (await page.evaluate(() => !('axe' in globalThis))) await page.evaluate(axe);
  return page.evaluate(async (runOnly) => {
    const { axe: tool } = globalThis as unknown as { axe: Axe };
    const { violations } = await tool.run(document, { runOnly, resultTypes: ['violations'] });
    return violations.map(({ id, nodes }) => `${id}: ${nodes[0].html.slice(0, 160)}`);
  }, rules);
}
/** Whatever can be pressed and is smaller than 44 px, with its size. */
export const smallTargets = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('a[href], button, input, select, summary')]
      .filter((each) => each.checkVisibility({ visibilityProperty: true }))
      .map((each) => ({ each, box: (each.closest('label') ?? each).getBoundingClientRect() }))
      .filter(({ box }) => box.width < 43.5 || box.height < 43.5)
      .map(
        ({ each, box }) =>
          `${box.width.toFixed(0)} x ${box.height.toFixed(0)}: ${each.outerHTML.slice(0, 100)}`,
      ),
  );
const sticksOut = (page: Page): Promise<boolean> =>
  page.evaluate(() =>
    [document.documentElement, ...document.querySelectorAll('main')].some(
      (each) => each.scrollWidth > each.clientWidth + 1,
    ),
  );
