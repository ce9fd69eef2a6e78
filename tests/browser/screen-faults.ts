// SPDX-License-Identifier: MIT
// What is wrong with a screen as it stands, by axe's rules for WCAG 2.2 A and AA in day and night colours, and
// what sticks out of it. It clicks nothing.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
type Found = { id: string; nodes: { html: string }[] };
type Axe = { run(at: Document, options: object): Promise<{ violations: Found[] }> };

/** One line for every fault, empty when there is none. */
export async function screenFaults(page: Page): Promise<string[]> {
  const faults: string[] = [];
  for (const colorScheme of ['dark', 'light'] as const) {
    await page.emulateMedia({ colorScheme });
    for (const line of await rulesBroken(page)) faults.push(`${colorScheme}: ${line}`);
  }
  return (await sticksOut(page)) ? [...faults, 'sticks out at the side'] : faults;
}
/** The rules broken, with the first element of each. */
async function rulesBroken(page: Page): Promise<string[]> {
  if (await page.evaluate(() => !('axe' in globalThis))) await page.evaluate(axe);
  return page.evaluate(async () => {
    const { axe: tool } = globalThis as unknown as { axe: Axe };
    const runOnly = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    const { violations } = await tool.run(document, { runOnly });
    return violations.map(({ id, nodes }) => `${id}: ${nodes[0].html.slice(0, 160)}`);
  });
}
const sticksOut = (page: Page): Promise<boolean> =>
  page.evaluate(() =>
    [document.documentElement, ...document.querySelectorAll('main')].some(
      (each) => each.scrollWidth > each.clientWidth + 1,
    ),
  );
