// SPDX-License-Identifier: MIT
// What a person presses, by the words on it: cautions are ticked and bench steps confirmed too, but those are work at
// the bench and not counted as clicks. A hold that was let go and held again is one press.
import type { Page } from 'playwright-core';

const atTheBench = /^(It is done, go on|Let the person at the virtual bench read it)$/;

/** Begins to watch; the returned function gives the names of what was pressed since. */
export async function watchPresses(page: Page): Promise<() => Promise<readonly string[]>> {
  const seen = await page.evaluateHandle(() => {
    const words: string[] = [];
    const press = ({ target }: Event) => {
      const at = (target as Element).closest('button, a, summary, input:not([type=checkbox])');
      if (at) words.push((at.getAttribute('aria-label') ?? at.textContent ?? '').trim());
    };
    document.addEventListener('pointerdown', press, true);
    return words;
  });
  return async () => {
    const words = (await seen.jsonValue()).map((each) => each.replace(/^Held too short$/, 'Hold to go live'));
    return [...new Set(words.filter((each) => !atTheBench.test(each)))];
  };
}
