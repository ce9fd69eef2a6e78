// SPDX-License-Identifier: MIT
// Whatever stops the page must stop the rig: Escape at once, a frozen main thread by the beats it withholds.
import { afterAll, beforeAll, expect, it } from 'vitest';
import { broken, builtPage, holdToGoLive, untilVerdict, type BuiltPage } from './page-fixture.ts';

let built: BuiltPage;
beforeAll(async () => {
  built = await builtPage();
});
afterAll(() => built?.close());

async function liveRun() {
  const opened = await built.open(1280, 800);
  const { page } = opened;
  await page.getByRole('button', { name: 'Try it on the virtual rig' }).click();
  await page.getByRole('link', { name: 'Check the receiver rail' }).click();
  await holdToGoLive(page);
  await page.getByText('Neutral.').waitFor({ timeout: 60_000 });
  return opened;
}
it('ends a run on Escape, keeps its record and counts it as not measured', async () => {
  const { page, complaints } = await liveRun();
  await page.keyboard.press('Escape');
  await untilVerdict(page, 30_000);
  expect(await page.getByRole('alert').innerText()).toMatch(/^Stopped/);
  expect(await page.getByRole('region', { name: 'Verdict' }).innerText()).toContain('Not measured');
  expect(complaints).toEqual([]);
  await page.context().close();
});
it('stops the rig when the main thread is frozen, and says why', async () => {
  const { page } = await liveRun();
  // The accessibility check is itself long enough to freeze the page.
  expect(await broken(page), 'live').toEqual([]);
  await page.evaluate(() => {
    const endMs = performance.now() + 2500;
    while (performance.now() < endMs);
  });
  await untilVerdict(page, 30_000);
  expect(await page.getByRole('alert').innerText()).toMatch(/Tripped, everything off[\s\S]*fell silent/);
  await page.getByRole('button', { name: 'I found it, clear the trip' }).click();
  await page
    .getByText('Nothing is live.')
    .or(page.getByRole('button', { name: 'Run it again' }))
    .first()
    .waitFor();
  await page.context().close();
});
it('gives words for a file that is no record', async () => {
  const { page } = await built.open(1280, 800);
  const file = {
    name: 'record.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{"format":"soup"}'),
  };
  await page.getByLabel('File of a saved record').setInputFiles(file);
  expect(await page.getByRole('alert').innerText()).toContain('not a run record of this bench');
  await page.context().close();
});
