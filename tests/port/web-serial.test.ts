// SPDX-License-Identifier: MIT
// The built page as `npm start` serves it, in unmodified Chromium over its own Web Serial, to the compiled firmware
// on a pseudo-terminal that the system calls a USB adapter: connect, live values, a verdict, unplugged in a run,
// plugged in again. One thing is stood in for: the click in the browser's chooser, which has no window here.
import { type ChildProcess } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readRecord, samplesOf } from '#core/record/record-reader';
import { drawCar } from '#sim/physics/population';
import { actInScene } from '../../bench-sim/harness/scene.ts';
import { holdToGoLive } from '../browser/bench-hands.ts';
import { missingForPrivateSerial, PrivateSerial } from './private-serial.ts';
import { type RigProcess, startRig, top, until } from './rig-fixture.ts';

const seed = 1;
const missing = missingForPrivateSerial();
if (missing) process.stdout.write(`not run: Web Serial in Chromium (${missing})\n`);

/** A port that nobody uses here; inside the private network nobody else is. */
async function freePort(): Promise<number> {
  const probe = createServer().listen(0);
  const { port } = probe.address() as { port: number };
  await new Promise((done) => probe.close(done));
  return port;
}
/** What the chooser gives when a person picks the one device that is there. */
function pickTheOnlyPort(): void {
  const { serial } = navigator;
  serial.requestPort = async () => {
    const [port] = await serial.getPorts();
    if (!port) throw new DOMException('No port selected by the user.', 'NotFoundError');
    return port;
  };
}
class Bench {
  constructor(
    readonly serial: PrivateSerial,
    readonly server: ChildProcess,
    readonly browser: Browser,
    readonly page: Page,
    readonly address: string,
    readonly complaints: readonly string[],
  ) {}
  rig: RigProcess | null = null;

  static async make(): Promise<Bench> {
    const port = await freePort();
    const serial = await PrivateSerial.start(`http://localhost:${port}`);
    const server = serial.run(process.execPath, [join(top, 'web/serve/start.mjs')], { PORT: String(port) });
    let said = '';
    server.stdout!.on('data', (chunk: Buffer) => (said += chunk));
    await until(() => said.includes('Bench Marshal is at'), 120_000, 'the page being served');
    const address = /http:\S+/.exec(said)![0];
    const browser = await serial.launchChromium();
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, reducedMotion: 'reduce' });
    const complaints: string[] = [];
    page.on('pageerror', (error) => complaints.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error') complaints.push(message.text());
    });
    await page.addInitScript(pickTheOnlyPort);
    await page.addInitScript((car) => localStorage.setItem('car', car), JSON.stringify(drawCar(seed).car));
    return new Bench(serial, server, browser, page, address, complaints);
  }
  async plugIn(): Promise<void> {
    this.rig = await startRig(join(this.serial.folder, 'rig'), '--seed', String(seed));
    await this.serial.plug(this.rig.path);
  }
  async unplug(): Promise<void> {
    await this.rig!.end();
    this.rig = null;
    await this.serial.unplug();
  }
  async close(): Promise<void> {
    await this.browser.close();
    this.server.kill();
    await this.rig?.end();
    this.serial.stop();
  }
}
/** Does at the bench what is asked, until `over` is there. */
async function serveAsks({ page, rig }: Bench, over: ReturnType<Page['locator']>, ms: number): Promise<void> {
  const ask = page.getByRole('group', { name: 'Asked of you' });
  await until(
    async () => {
      if (await over.isVisible()) return true;
      if (!(await ask.isVisible())) return false;
      const words = await ask.locator('p').innerText();
      await actInScene(rig!.scene, words);
      await ask.getByRole('button').click();
      return false;
    },
    ms,
    'the end of the run',
  );
}
/** Connects unless it is connected already, as after a first try that took too long. */
async function connect({ page }: Bench): Promise<void> {
  const connected = page.getByText('Rig on USB');
  const button = page.getByRole('button', { name: 'Connect my rig' });
  await connected.or(button).first().waitFor();
  if (!(await connected.isVisible())) await button.click();
  await connected.waitFor({ timeout: 60_000 });
}
const rowsPerS = async (page: Page): Promise<number> => {
  const text = await page.locator('footer').innerText();
  return Number(/([\d,]+) rows a second/.exec(text)?.[1].replace(',', '') ?? 0);
};

describe.skipIf(missing && process.env.CI !== 'true')('the page over Web Serial', () => {
  let bench: Bench;
  beforeAll(async () => {
    if (missing) throw new Error(`With CI=true this must run: ${missing}.`);
    bench = await Bench.make();
    await bench.plugIn();
    await bench.page.goto(bench.address);
  });
  afterAll(() => bench?.close());

  it('connects by its own button and shows live values', async () => {
    const { page } = bench;
    await connect(bench);
    // 1068 scans of 936 us in a second of the rig's time; a busy computer may make the virtual rig much slower.
    await until(async () => (await rowsPerS(page)) > 30, 60_000, 'rows arriving');
    expect(await rowsPerS(page)).toBeLessThan(1300);
    await page.getByText('Nothing is live.').waitFor();
  });
  it('runs rail-sag to its verdict', async () => {
    const { page } = bench;
    await page.goto(`${bench.address}#/run/rail-sag`);
    await holdToGoLive(page);
    await serveAsks(bench, page.getByRole('link', { name: 'Done, back to the car' }), 150_000);
    expect(await page.getByRole('alert').allInnerTexts()).toEqual([]);
    const verdict = page.getByRole('region', { name: 'Verdict' });
    const told = await verdict.innerText();
    expect(told).toMatch(/\bPass\b/);
    // The value that the model was built with, ohm; told in milliohm with its uncertainty.
    const truth = drawCar(seed).plant.truth()['source-resistance'];
    const [, value, u] = /([\d.]+)\s*mΩ ± ([\d.]+)/.exec(told)!.map(Number);
    expect(Math.abs(value - 1000 * truth)).toBeLessThan(u);
  });
  it('says what happened and what to do when it is unplugged in a run, and keeps the data', async () => {
    const { page } = bench;
    await page.getByRole('button', { name: 'Run it again' }).click();
    await holdToGoLive(page);
    await page.getByText('Neutral.').waitFor({ timeout: 60_000 });
    await bench.unplug();
    const alert = page.getByRole('alert').first();
    await alert.getByText('Link lost').first().waitFor({ timeout: 30_000 });
    await page.getByRole('link', { name: 'Done, back to the car' }).waitFor({ timeout: 20_000 });
    const told = await page.getByRole('alert').first().innerText();
    expect(told).toContain('The state of the rig is unknown: disconnect the pack');
    expect(told).toMatch(/kept/);
    expect(await page.getByRole('region', { name: 'Verdict' }).innerText()).toContain('Not measured');
    const saving = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as a file' }).click();
    const record = readRecord(readFileSync(await (await saving).path(), 'utf8'));
    expect(record.ending.kind).toBe('link lost');
    expect(samplesOf(record).latestS).toBeGreaterThan(1);
  });
  it('connects again when it is plugged in again', async () => {
    const { page } = bench;
    await bench.plugIn();
    await page.getByRole('link', { name: 'Done, back to the car' }).click();
    await until(async () => (await rowsPerS(page)) > 30, 60_000, 'rows arriving again');
    await page.getByText('Nothing is live.').waitFor();
    await page.goto(`${bench.address}#/logbook`);
    await page.locator('tbody tr').nth(1).waitFor();
    expect(await page.locator('tbody tr').count()).toBe(2);
    expect(await page.locator('tbody tr').first().innerText()).toMatch(/Not measured/i);
    expect(bench.complaints).toEqual([]);
  });
});
