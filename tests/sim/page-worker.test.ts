// SPDX-License-Identifier: MIT
// The page's worker against the virtual rig, all in rig time: what becomes of a running motor when the page freezes
// or hides or the cable is pulled. The bounds are the page's 300 ms and the firmware's own silence limit, and are
// measured at the emulated rig's outputs.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { wire } from '#protocol/codes';
import { truthOf } from '#core/record/virtual-truth';
import { readRecord } from '#core/record/record-reader';
import { drawCar } from '#sim/physics/population';
import { VirtualLink } from '#sim/virtual-link';
import { createVirtualRig } from '#sim/virtual-rig';
import { BenchDesk } from '../../web/src/worker/bench-desk.ts';
import type { FromBench, RigCard } from '../../web/src/worker/messages.ts';
import { freshMs } from '../../web/src/worker/page-watch.ts';

const hex = readFileSync(
  new URL('../../firmware-protocol/firmware/bench-marshal.hex', import.meta.url),
  'utf8',
);
const seed = 5;
/** Of a throttle pulse: beyond it a motor is driven. */
const drivenS = 1.53e-3;

/** The rig's silence limit, one beat on its way, one frame of the throttle's pulses (20 ms, common practice). */
const silentMs = wire.hostLostMs + wire.beatMs + 20;

/** A page that ticks in rig time while `ticking`, and a motor-no-load run begun on it. */
async function bench(way: RigCard['way']) {
  const { plant, car } = drawCar(seed, {});
  const rig = createVirtualRig({ hex, plant, seed });
  const link = new VirtualLink(rig);
  const { clock } = link;
  const page = { ticking: true };
  const told: FromBench[] = [];
  const desk = new BenchDesk({
    tell: (message) => void hear(message),
    now: () => clock.now(),
    randomWord: () => 7,
  });
  function hear(message: FromBench): void {
    told.push(message);
    if (message.kind !== 'ask') return;
    rig.person(message.words);
    clock.after(1, () => desk.take({ kind: 'done', askId: message.askId }));
  }
  clock.every(100, () => page.ticking && desk.take({ kind: 'tick' }));
  desk.take({ kind: 'tick' });
  const truth = () => Promise.resolve(truthOf({ seed, faults: {}, truth: () => plant.truth() }));
  expect(await desk.open(link, clock, { kind: way, truth: way === 'virtual' ? truth : undefined })).toBe(
    true,
  );
  desk.take({
    kind: 'run',
    runId: 'r',
    checkId: 'motor-no-load',
    car,
    startedAt: '2031-05-04T10:00:00.000Z',
  });
  const until = async (what: string, seen: () => boolean, withinMs: number): Promise<number> => {
    const endMs = clock.now() + withinMs;
    while (!seen()) {
      if (clock.now() > endMs) throw new Error(`not within ${withinMs} ms of rig time: ${what}`);
      await new Promise<void>((done) => clock.after(4, done));
    }
    return clock.now();
  };
  const driven = () => (plant.inputs.throttlePulseS ?? 0) > drivenS;
  await until('motor driven', driven, 60_000);
  const ended = () => told.find((message) => message.kind === 'finished');
  const record = async () => {
    await until('record', () => ended() !== undefined, 20_000);
    return readRecord(ended()!.text);
  };
  return { desk, link, page, plant, clock, until, driven, record, told };
}

describe('a running motor', () => {
  it('loses its drive when the page freezes, within the page’s and the rig’s bounds', async () => {
    const { page, plant, clock, until, driven, record } = await bench('serial');
    page.ticking = false;
    const frozenMs = clock.now();
    const neutralMs = await until('neutral', () => !driven(), 5000);
    expect(neutralMs - frozenMs).toBeLessThan(freshMs + silentMs);
    expect(neutralMs - frozenMs).toBeLessThan(wire.failSafeMaxMs);
    await until('feed off', () => plant.inputs.feed === 'off', 5000);
    const { ending, verdict, virtual } = await record();
    expect(ending).toMatchObject({ kind: 'tripped', words: expect.stringContaining('fell silent') });
    expect(verdict).toBe('not measured');
    expect(virtual, 'a real rig has no truth to tell').toBeUndefined();
  });
  it('is stopped when the page is hidden, and the run counts as not measured', async () => {
    const { desk, plant, clock, until, driven, record } = await bench('virtual');
    desk.take({ kind: 'hidden', hidden: true });
    const hiddenMs = clock.now();
    expect((await until('neutral', () => !driven(), 5000)) - hiddenMs).toBeLessThan(100);
    await until('feed off', () => plant.inputs.feed === 'off', 5000);
    const { ending, verdict } = await record();
    expect(ending).toMatchObject({ kind: 'stopped', words: expect.stringContaining('The page was hidden') });
    expect(verdict).toBe('not measured');
  });
  it('keeps what it had when the cable is pulled, and says to disconnect the pack', async () => {
    const { link, plant, clock, until, driven, record, told } = await bench('virtual');
    link.unplug();
    const pulledMs = clock.now();
    const { ending, verdict, findings, raw, virtual } = await record();
    expect(ending).toMatchObject({
      kind: 'link lost',
      words: expect.stringContaining('disconnect the pack'),
    });
    expect(verdict).toBe('not measured');
    expect(findings.every((finding) => !finding.measured)).toBe(true);
    expect(raw.blocks, 'blocks kept').toBeGreaterThan(500);
    expect(virtual).toMatchObject({ seed, faults: {}, truth: { kv: expect.any(Number) } });
    expect(told.some((message) => message.kind === 'phase' && message.phase === 'lost')).toBe(true);
    expect((await until('neutral', () => !driven(), 5000)) - pulledMs).toBeLessThan(silentMs);
    await until('feed off', () => plant.inputs.feed === 'off', 5000);
  });
});
