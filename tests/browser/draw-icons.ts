// SPDX-License-Identifier: MIT
// `node --import tsx tests/browser/draw-icons.ts`: draws the icons of the installed page from web/public/mark.svg.
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';

const folder = join(import.meta.dirname, '../../web/public');
const mark = readFileSync(join(folder, 'mark.svg'), 'utf8');
/** A masked icon is cut to a circle of four fifths at least: the mark stays inside it. */
const icons = [
  { file: 'mark-180.png', size: 180, share: 1 },
  { file: 'mark-192.png', size: 192, share: 1 },
  { file: 'mark-512.png', size: 512, share: 1 },
  { file: 'mark-masked-512.png', size: 512, share: 0.6 },
];
const executablePath = execFileSync('which', ['chromium'], { encoding: 'utf8' }).trim();
const browser = await chromium.launch({ executablePath, args: ['--headless', '--no-sandbox'] });
const page = await browser.newPage();
for (const { file, size, share } of icons) {
  await page.setViewportSize({ width: size, height: size });
  const ground = share < 1 ? 'background:#F8FBFA;' : '';
  await page.setContent(
    `<style>body{margin:0;${ground}}svg{position:absolute;inset:0;margin:auto;width:${share * size}px;height:${share * size}px}</style>${mark}`,
  );
  await page.screenshot({ path: join(folder, file), omitBackground: share === 1 });
}
await browser.close();
