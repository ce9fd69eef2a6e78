// SPDX-License-Identifier: MIT
// A walk through a screen by the Tab key: everything that can be worked is reached, in the order it stands in, and is
// seen to have the focus.
import type { Page } from 'playwright-core';

interface Stop {
  readonly words: string;
  /** Its place among everything that can take the focus; -1 for what is none of them. */
  readonly place: number;
  readonly ringPx: number;
  readonly inView: boolean;
}
const most = 250;

/** One line for every fault, empty when there is none. */
export async function keyFaults(page: Page): Promise<string[]> {
  const wanted = await markAll(page);
  const stops: Stop[] = [];
  for (let k = 0; k < most; k++) {
    await page.keyboard.press('Tab');
    const stop = await page.evaluate(look);
    if (stop === null || stops.some(({ place }) => place === stop.place)) break;
    stops.push(stop);
  }
  const missed = wanted.filter((_, place) => !stops.some((stop) => stop.place === place));
  return [
    ...missed.map((words) => `not reached by keys: ${words}`),
    ...stops.filter(({ ringPx }) => ringPx < 2).map(({ words }) => `no focus to be seen: ${words}`),
    ...stops.filter(({ inView }) => !inView).map(({ words }) => `focus out of view: ${words}`),
    ...stops
      .filter(({ place }, k) => k > 0 && place < stops[k - 1].place)
      .map(({ words }) => `out of order: ${words}`),
  ];
}
/** Numbers what Tab must reach, one of each radio group, and puts the focus before the first. */
const markAll = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const all = document.querySelectorAll<HTMLElement>(
      'a[href], button:not([disabled]), input:not([disabled]), select, textarea, summary, [tabindex="0"]',
    );
    const groups = new Set<string>();
    const reached = [...all].filter((each) => {
      if (each.tabIndex < 0 || !each.checkVisibility({ visibilityProperty: true })) return false;
      if (!(each instanceof HTMLInputElement) || each.type !== 'radio') return true;
      const chosen = document.querySelector(`input[name="${each.name}"]:checked`);
      if (groups.has(each.name) || (chosen && chosen !== each)) return false;
      return Boolean(groups.add(each.name));
    });
    reached.forEach((each, place) => (each.dataset.keyPlace = String(place)));
    const start = document.createElement('span');
    start.tabIndex = -1;
    document.body.prepend(start);
    start.focus();
    start.remove();
    return reached.map((each) => each.outerHTML.slice(0, 120));
  });
function look(): Stop | null {
  const at = document.activeElement;
  if (!(at instanceof HTMLElement || at instanceof SVGElement) || at === document.body) return null;
  const style = getComputedStyle(at);
  const focus = style.getPropertyValue('--focus').trim();
  // What is drawn shows its focus by its edge: in the colour of the focus, or in that of a fail's words on a fail.
  const probe = document.body.appendChild(document.createElement('i'));
  const colours = [focus, style.getPropertyValue('--on-fail').trim()].map((colour) => {
    probe.style.color = colour;
    return getComputedStyle(probe).color;
  });
  probe.remove();
  const edges = [...at.querySelectorAll('*')]
    .map((each) => getComputedStyle(each))
    .filter(({ stroke }) => colours.includes(stroke));
  const edgePx = Math.max(0, ...edges.map(({ strokeWidth }) => Number.parseFloat(strokeWidth)));
  const outlinePx = style.outlineStyle === 'none' ? 0 : Number.parseFloat(style.outlineWidth);
  const box = at.getBoundingClientRect();
  return {
    words: at.outerHTML.slice(0, 120),
    place: Number(at.dataset.keyPlace ?? -1),
    ringPx: Math.max(outlinePx, edgePx),
    inView: box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth,
  };
}
