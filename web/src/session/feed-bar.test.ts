// SPDX-License-Identifier: MIT
// A first power that failed bars the full feed for every other check of the session, until one passes; what never
// closes the full feed goes on, and so does a session that starts anew.
import { describe, expect, it } from 'vitest';
import type { Bench } from '#checks/check';
import { runCheck } from './check-runner.ts';
import { car, connected, label, plan, toyCheck } from './session-fixture.ts';

type Scene = Awaited<ReturnType<typeof connected>>;
type Procedure = (bench: Bench) => Promise<unknown>;
const full: Procedure = async (bench) => {
  await bench.powerUp(plan, 'full');
  return {};
};
const run = async (
  { clock, session }: Scene,
  procedure: Procedure,
  more: Parameters<typeof toyCheck>[1] = {},
) => {
  const options = { car, label, ask: () => Promise.resolve() };
  return (await clock.settle(runCheck(session, toyCheck(procedure, more), options))).record;
};
const low = { kind: 'common practice', source: 'test', unit: 'V' } as const;
/** A first power in short: with a bound of 9 V the toy's 6.85 V fails. */
const firstPower = (all: Scene, min: number) =>
  run(all, full, { title: 'First power', provesFeed: true, limits: () => ({ rail: { ...low, min } }) });

describe('after a first power that failed', () => {
  it('a check that needs the full feed is refused before anything goes live, with words', async () => {
    const all = await connected();
    expect((await firstPower(all, 9)).verdict).toBe('fail');
    const before = all.rig.sentOf('goLive').length;
    const record = await run(all, full);
    expect(record.verdict).toBe('not measured');
    expect(record.ending.words).toMatch(/"First power" failed in this session.*Mend what it found/);
    expect(all.rig.sentOf('goLive')).toHaveLength(before);
  });
  it('so is one that closes it by hand', async () => {
    const all = await connected();
    await firstPower(all, 9);
    const record = await run(all, async (bench) => {
      await bench.powerUp(plan, 'limited');
      await bench.feed('full');
    });
    expect(record.ending.words).toMatch(/"First power" failed/);
  });
  it('a check that only streams goes on', async () => {
    const all = await connected();
    await firstPower(all, 9);
    const record = await run(all, async (bench) => {
      await bench.stream(plan);
      await bench.wait(0.5);
      return {};
    });
    expect(record.ending.kind).toBe('done');
  });
  it('a pass lifts it', async () => {
    const all = await connected();
    await firstPower(all, 9);
    expect((await firstPower(all, 5)).verdict).toBe('pass');
    expect((await run(all, full)).verdict).toBe('pass');
  });
  it('one that measured nothing does not', async () => {
    const all = await connected();
    await firstPower(all, 9);
    await run(all, () => Promise.reject(new Error('broken off')), { provesFeed: true });
    expect((await run(all, full)).verdict).toBe('not measured');
  });
});
