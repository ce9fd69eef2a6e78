// SPDX-License-Identifier: MIT
// How fast the virtual rig runs in the page while its charts draw: rig seconds a wall second, read off the charts'
// own sentences. It only tells; how fast is fast enough is for the reader of the figure.
import type { Page } from 'playwright-core';

/** Begins to watch; the returned function tells what was seen so far. */
export async function watchSpeed(page: Page): Promise<() => Promise<string>> {
  const seen = await page.evaluateHandle(() => {
    /** Seconds in the run, and when they were first seen. */
    const turns: { rigS: number; wallMs: number }[] = [];
    const look = () => {
      const words = document.querySelector('.canvas')?.getAttribute('aria-label') ?? '';
      const rigS = Number(/ over (\d+) s/.exec(words)?.[1] ?? Number.NaN);
      if (Number.isNaN(rigS) || turns.at(-1)?.rigS === rigS) return;
      turns.push({ rigS, wallMs: performance.now() });
    };
    setInterval(look, 20);
    return turns;
  });
  return async () => {
    const turns = await seen.jsonValue();
    if (turns.length < 5) return 'no speed: the charts changed too seldom';
    // The first second may have begun before the watch; the last column comes when the run is over.
    const [from, to] = [turns[1], turns[turns.length - 2]];
    const speed = ((to.rigS - from.rigS) * 1000) / (to.wallMs - from.wallMs);
    return `${speed.toFixed(2)} s of rig time per second while charts drew (${to.rigS - from.rigS} s watched)`;
  };
}
