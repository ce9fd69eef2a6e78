// SPDX-License-Identifier: MIT
// Chromium with a fresh profile on the built page, and the steps a person takes in it, by role and label. Needs
// the chromium package and a built page; errors on the console fail the test that caused them.
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';
import { preview, type PreviewServer } from 'vite';

const root = join(import.meta.dirname, '../..');
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const flags =
  '--headless --no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync';
/** The rig waits for a busy host, so faster than real time only shortens the test. */
const speed = 2;

export interface BuiltPage {
  readonly address: string;
  open(width: number, height: number): Promise<OpenPage>;
  close(): Promise<void>;
}
export interface OpenPage {
  readonly page: Page;
  /** Everything the console complained about. */
  readonly complaints: readonly string[];
}
export async function builtPage(): Promise<BuiltPage> {
  if (!existsSync(join(root, 'web/dist/index.html')))
    throw new Error('The page is not built: run `npx vite build` first.');
  const server: PreviewServer = await preview({
    root: join(root, 'web'),
    configFile: join(root, 'vite.config.ts'),
    preview: { port: 4519, host: 'localhost' },
    logLevel: 'error',
  });
  const executablePath = execFileSync('which', ['chromium'], { encoding: 'utf8' }).trim();
  const browser: Browser = await chromium.launch({ executablePath, args: flags.split(' ') });
  const address = `${server.resolvedUrls!.local[0]}?speed=${speed}`;
  return {
    address,
    open: (width, height) => openPage(browser, address, width, height),
    async close() {
      await browser.close();
      await server.close();
    },
  };
}
async function openPage(browser: Browser, address: string, width: number, height: number): Promise<OpenPage> {
  const context = await browser.newContext({ viewport: { width, height }, reducedMotion: 'reduce' });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(address);
  return { page, complaints };
}
/** Rules of WCAG 2.2 A and AA that the screen breaks, with the first element of each. */
export async function broken(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const { axe: tool } = globalThis as unknown as {
      axe: {
        run(
          at: Document,
          options: object,
        ): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
      };
    };
    const runOnly = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    const { violations } = await tool.run(document, { runOnly });
    return violations.map(({ id, nodes }) => `${id}: ${nodes[0].html.slice(0, 160)}`);
  });
}
/** True when something sticks out at the side. */
export const overflows = (page: Page): Promise<boolean> =>
  page.evaluate(() =>
    [document.documentElement, ...document.querySelectorAll('main')].some(
      (each) => each.scrollWidth > each.clientWidth + 1,
    ),
  );
export async function holdToGoLive(page: Page): Promise<void> {
  await page.getByRole('heading', { name: 'Wire it like this' }).waitFor();
  await page.getByRole('checkbox').first().waitFor();
  for (const box of await page.getByRole('checkbox').all()) await box.check();
  const hold = page.getByRole('button', { name: 'Hold to go live' });
  await hold.and(page.locator(':not([aria-disabled])')).waitFor({ timeout: 30_000 });
  await hold.hover();
  await page.mouse.down();
  await page.waitForTimeout(1100);
  await page.mouse.up();
}
/** Does what is asked at the bench until the run has ended. */
export async function untilVerdict(page: Page, timeoutMs = 180_000): Promise<void> {
  const over = page.getByRole('link', { name: 'Done, back to the car' });
  const asked = page.getByRole('button', { name: 'It is done, go on' });
  const endMs = Date.now() + timeoutMs;
  while (!(await over.isVisible())) {
    if (Date.now() > endMs) throw new Error(`no verdict within ${timeoutMs / 1000} s`);
    if (await asked.isVisible()) await asked.click();
    await page.waitForTimeout(200);
  }
}
