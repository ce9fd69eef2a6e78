// SPDX-License-Identifier: MIT
// What is looked at on the screens of a plan: axe in both colours, what sticks out, targets too small while a run is
// on; a picture of each, as it stands and unrolled, where a folder is given. A screen seen before is passed by.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import type { Look } from './bench-hands.ts';
import { screenFaults, smallTargets } from './screen-faults.ts';

const ofRun = ['ready', 'live', 'asked'];
/** More than one screen of a phone, for what lies below its edge. */
const unrolledPx = 3000;

export class PlanLooks {
  readonly faults: string[] = [];
  private readonly seen = new Set<string>();

  constructor(private readonly folder: string | null) {
    if (folder) mkdirSync(folder, { recursive: true });
  }
  /** The look of one plan's page; `seen` holds over all plans. */
  at =
    (page: Page): Look =>
    async (screen) => {
      const words = await wordsOf(page, screen);
      const key = `${screen}: ${words}`;
      if (this.seen.has(key)) return;
      this.seen.add(key);
      if (this.folder) await pictures(page, join(this.folder, fileOf(this.seen.size, key)));
      if (screen !== 'live')
        for (const fault of await screenFaults(page)) this.faults.push(`${key}: ${fault}`);
      if (ofRun.includes(screen))
        for (const target of await smallTargets(page)) this.faults.push(`${key}: ${target}`);
    };
}
/** What tells one screen of its kind from another. */
async function wordsOf(page: Page, screen: string): Promise<string> {
  const check = new URL(page.url()).hash.split('/').at(-1)!;
  const asked = page.getByRole('group', { name: 'Asked of you' }).locator('#asked');
  const telling =
    screen === 'asked' ? asked : page.getByRole('region', { name: 'Next' }).getByRole('heading');
  if (screen !== 'asked' && screen !== 'plan') return check;
  return `${check}, ${await telling.innerText({ timeout: 5000 }).catch(() => 'gone')}`;
}
const fileOf = (number: number, key: string): string =>
  `${String(number).padStart(3, '0')} ${key.replace(/[^\w ,-]+/g, '').slice(0, 80)}`;
async function pictures(page: Page, file: string): Promise<void> {
  const size = page.viewportSize()!;
  await page.screenshot({ path: `${file}.png` });
  const more = await page.evaluate(() =>
    Math.max(
      0,
      ...[...document.querySelectorAll('main')].map((each) => each.scrollHeight - each.clientHeight),
    ),
  );
  if (more < 2) return;
  await page.setViewportSize({ ...size, height: Math.min(unrolledPx, size.height + more) });
  await page.screenshot({ path: `${file}, unrolled.png` });
  await page.setViewportSize(size);
}
