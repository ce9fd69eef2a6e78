// SPDX-License-Identifier: MIT
// The link and clock on rig time: exact timers, the same bytes each run, a lost cable; pacing by a wall clock.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { encodeFrame } from '#protocol/frame';
import { encodeMessage } from '#protocol/messages';
import { drawCar } from './physics/population.ts';
import { LONGEST_LAG_MS, pacedBy } from './rig-pace.ts';
import { VirtualLink } from './virtual-link.ts';
import { createVirtualRig } from './virtual-rig.ts';

const hex = readFileSync(new URL('../firmware-protocol/firmware/bench-marshal.hex', import.meta.url), 'utf8');
const makeLink = (seed = 1) => new VirtualLink(createVirtualRig({ hex, plant: drawCar(seed).plant, seed }));
const wait = (link: VirtualLink, ms: number) => new Promise<void>((done) => link.clock.after(ms, done));
const frame = (message: Parameters<typeof encodeMessage>[0]) => encodeFrame(encodeMessage(message));

describe('virtual link', () => {
  it('repeats a talk byte for byte', async () => {
    const talk = async () => {
      const link = makeLink();
      const heard: number[] = [];
      link.onBytes((bytes) => heard.push(...bytes));
      await link.open();
      await wait(link, 150);
      await link.send(frame({ type: 'stream', id: 1, on: 1 }));
      await wait(link, 300);
      await link.close();
      return heard;
    };
    const first = await talk();
    expect(first.length).toBeGreaterThan(3000);
    expect(await talk()).toEqual(first);
  });

  it('fires timers at their time of the rig, earliest first, and repeats until cancelled', async () => {
    const link = makeLink();
    const seen: [string, number][] = [];
    const note = (name: string) => () =>
      seen.push([name, Math.round((link.clock.now() - start) * 100) / 100]);
    const start = link.clock.now();
    await link.open();
    link.clock.after(7.5, note('b'));
    link.clock.after(3.25, note('a'));
    const cancel = link.clock.every(20, note('tick'));
    link.clock.after(1, () => undefined)();
    await wait(link, 65);
    cancel();
    await wait(link, 50);
    await link.close();
    expect(seen).toEqual([
      ['a', 3.25],
      ['b', 7.5],
      ['tick', 20],
      ['tick', 40],
      ['tick', 60],
    ]);
  });

  it('tells a pulled cable once and refuses to send from then on', async () => {
    const link = makeLink();
    let lost = 0;
    link.onLost(() => lost++);
    await link.open();
    await wait(link, 10);
    link.unplug();
    link.unplug();
    expect(lost).toBe(1);
    await expect(link.send(Uint8Array.of(0))).rejects.toMatchObject({ code: 'linkLost' });
  });
});

describe('pace', () => {
  it('sleeps when ahead, and gives up a lag beyond 20 ms instead of catching up', async () => {
    let now = 1000;
    const slept: number[] = [];
    const wall = {
      now: () => now,
      sleep: (ms: number) => {
        slept.push(ms);
        now += ms;
        return Promise.resolve();
      },
    };
    const pace = pacedBy(wall, 1);
    await pace.before(0);
    await pace.before(2);
    expect(slept).toEqual([2]);
    now += 500;
    // 500 ms late: rig time may make good 20 ms, the rest is gone.
    for (let rigMs = 4; rigMs <= 2 + LONGEST_LAG_MS; rigMs += 2) await pace.before(rigMs);
    expect(slept).toEqual([2]);
    await pace.before(6 + LONGEST_LAG_MS);
    expect(slept.length).toBe(2);
    expect(slept[1]).toBeLessThanOrEqual(6);
  });
});
