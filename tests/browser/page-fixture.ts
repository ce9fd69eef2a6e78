// SPDX-License-Identifier: MIT
// Chromium with a fresh profile on the built page. Needs the chromium package and a built page; errors on the
// console fail the test that caused them.
import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Browser, type Page, type Response } from 'playwright-core';
import { preview, type PreviewServer } from 'vite';

const root = join(import.meta.dirname, '../..');
const flags =
  '--headless --no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync';
/** Long, because other work on the computer must not fail a test. */
const patienceMs = 120_000;
/** The rig waits for a busy host, so faster than real time only shortens the test. */
const asFastAsItGoes = 50;

export interface BuiltPage {
  /** A fresh profile; `speed` of the virtual rig, 1 for real time. */
  open(width: number, height: number, speed?: number): Promise<OpenPage>;
  /** Where the copy of the built page lies. */
  readonly folder: string;
  /** Ends the server; the next `open` starts it again. */
  endServing(): Promise<void>;
  close(): Promise<void>;
}
export interface OpenPage {
  readonly page: Page;
  /** Goes to a place of the page, "#/logbook", without loading it anew. */
  go(place: string): Promise<void>;
  /** Everything the page fetched so far; what the service worker stores for itself is not among it. */
  readonly fetched: readonly Response[];
  /** Everything the console complained about. */
  readonly complaints: readonly string[];
}
export async function builtPage(): Promise<BuiltPage> {
  if (!existsSync(join(root, 'web/dist/index.html')))
    throw new Error('The page is not built: run `npx vite build` first.');
  // A copy: a build of somebody else's meanwhile must not pull the page away from under the browser.
  const outDir = mkdtempSync(join(tmpdir(), 'bench-marshal-page-'));
  cpSync(join(root, 'web/dist'), outDir, { recursive: true });
  let serving: PreviewServer | null = null;
  const served = async () => (serving ??= await serve(outDir)).resolvedUrls!.local[0];
  const endServing = async () => {
    await serving?.close();
    serving = null;
  };
  const executablePath = execFileSync('which', ['chromium'], { encoding: 'utf8' }).trim();
  const browser: Browser = await chromium.launch({ executablePath, args: flags.split(' ') });
  return {
    folder: outDir,
    open: async (width, height, speed = asFastAsItGoes) =>
      openPage(browser, `${await served()}?speed=${speed}`, width, height),
    endServing,
    async close() {
      await browser.close();
      await endServing();
      rmSync(outDir, { recursive: true });
    },
  };
}
const serve = (outDir: string): Promise<PreviewServer> =>
  preview({
    root: join(root, 'web'),
    configFile: join(root, 'vite.config.ts'),
    preview: { port: 4519, host: 'localhost' },
    build: { outDir },
    logLevel: 'error',
  });
async function openPage(browser: Browser, address: string, width: number, height: number): Promise<OpenPage> {
  const context = await browser.newContext({ viewport: { width, height }, reducedMotion: 'reduce' });
  context.setDefaultTimeout(patienceMs);
  await context.addInitScript(keepWorkers);
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  const fetched: Response[] = [];
  page.on('response', (response) => void fetched.push(response));
  await page.goto(address);
  const go = async (place: string) => {
    await page.goto(`${address}${place}`);
    await page.getByRole('heading', { level: 1 }).waitFor();
  };
  return { page, go, fetched, complaints };
}
/** Keeps the page's workers where a test can reach them: what a hand at the cable does comes from outside. */
function keepWorkers(): void {
  const kept: { worker: Worker; from: string }[] = [];
  const Plain = globalThis.Worker;
  globalThis.Worker = class extends Plain {
    constructor(...how: ConstructorParameters<typeof Worker>) {
      super(...how);
      kept.push({ worker: this, from: String(how[0]) });
    }
  };
  Object.assign(globalThis, { keptWorkers: kept });
}
/** Pulls the virtual rig's cable. */
export const pullCable = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const { keptWorkers } = globalThis as unknown as { keptWorkers: { worker: Worker; from: string }[] };
    const rig = keptWorkers.findLast(({ from }) => from.includes('rig-worker'));
    if (!rig) throw new Error('The page has no virtual rig.');
    rig.worker.postMessage({ kind: 'unplug' });
  });
