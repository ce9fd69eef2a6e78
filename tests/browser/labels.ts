// SPDX-License-Identifier: MIT
// `node --import tsx tests/browser/labels.ts`: every label on the page's screens, once, with the first screen that
// shows it: words that stand there, names for screen readers, titles, hints in fields. To be read for trade terms.
import type { Page } from 'playwright-core';
import { checks } from '#checks/index';
import { screens, secondVisit } from './all-screens.ts';
import { builtPage } from './page-fixture.ts';

/** Runs of text as they stand, and what attributes name. */
const labelsOf = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const named = ['aria-label', 'title', 'placeholder', 'alt'].flatMap((name) =>
      [...document.querySelectorAll(`[${name}]`)].map((each) => each.getAttribute(name) ?? ''),
    );
    const texts: string[] = [];
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walk.nextNode()) {
      const { parentElement, textContent } = walk.currentNode;
      if (parentElement?.tagName !== 'SCRIPT') texts.push(textContent ?? '');
    }
    return [document.title, ...texts, ...named];
  });
const plain = (words: string) => words.replaceAll(/\s+/g, ' ').trim();
/** A figure alone is no label. */
const isLabel = (words: string) => /\p{L}{2}/u.test(words);

const seen = new Set<string>();
function tell(screen: string, labels: readonly string[]): void {
  const fresh = [...new Set(labels.map(plain))].filter((each) => isLabel(each) && !seen.has(each));
  for (const each of fresh) {
    seen.add(each);
    process.stdout.write(`${screen}\t${each}\n`);
  }
}
const built = await builtPage();
const opened = await built.open(1280, 800);
const { page, go } = opened;
tell('first visit', await labelsOf(page));
await secondVisit(opened);
for (const screen of [...screens, ...checks.map(({ id }) => `run/${id}`)]) {
  await go(`#/${screen}`);
  await page.waitForTimeout(300);
  await page.evaluate(() => document.querySelectorAll('details').forEach((each) => (each.open = true)));
  tell(screen, await labelsOf(page));
}
await built.close();
