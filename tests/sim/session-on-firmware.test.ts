// SPDX-License-Identifier: MIT
// The session against the compiled firmware on the emulated board: what breaks a run off, what the rig does then,
// and what the person reads. No rig is scripted here.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Bench } from '#checks/check';
import { runCheck } from '#session/check-runner';
import { RigSession } from '#session/rig-session';
import { label, plan, toyCheck } from '#session/session-fixture';
import { drawCar } from '#sim/physics/population';
import { VirtualLink } from '#sim/virtual-link';
import { createVirtualRig } from '#sim/virtual-rig';

const hex = readFileSync(
  new URL('../../firmware-protocol/firmware/bench-marshal.hex', import.meta.url),
  'utf8',
);

async function bench(seed: number, mayBeat: () => boolean = () => true) {
  const { plant, car } = drawCar(seed);
  const rig = createVirtualRig({ hex, plant, seed });
  const link = new VirtualLink(rig);
  const session = new RigSession(link, link.clock, { mayBeat, randomWord: () => 0x1234567 });
  await session.connect();
  const run = async (procedure: (bench: Bench) => Promise<unknown>, signal?: AbortSignal) => {
    const ask = (words: string) => Promise.resolve(rig.person(words));
    return (await runCheck(session, toyCheck(procedure), { car, label, ask, signal })).record;
  };
  return { rig, link, session, plant, run };
}
const spin = async (on: Bench): Promise<void> => {
  await on.powerUp(plan);
  await on.throttle(0.25, 0.3);
  await on.wait(0.5);
};
/** A pulse counts as present for 50 ms after its last one. */
const isOff = ({ plant, rig }: Awaited<ReturnType<typeof bench>>) => {
  rig.runForMs(60);
  return plant.inputs.feed === 'off' && plant.inputs.throttlePulseS === null && plant.inputs.loadMask === 0;
};

describe('a session with the compiled firmware', () => {
  it('turns the motor, measures on one time axis, ends with everything off', async () => {
    const all = await bench(3);
    let edges = 0;
    const record = await all.run(async (on) => {
      await spin(on);
      edges = on.samples.edges(on.now() - 0.4, on.now()).length;
    });
    expect(record.ending).toMatchObject({ kind: 'done' });
    expect(edges).toBeGreaterThan(20);
    expect(isOff(all)).toBe(true);
    expect(all.session.beats.answered).toBe(all.session.beats.sent);
  });
  it('finds the true second of this rig by its fit', async () => {
    const all = await bench(4);
    const { clock } = await all.run(async (on) => {
      await on.powerUp(plan);
      await on.wait(8);
    });
    // A tick is eight cycles of the nominal 16 MHz; the rig's oscillator truly runs at trueHz.
    const trueRatio = 16e6 / all.rig.trueHz;
    expect(clock.origin).toBe('fit');
    expect(Math.abs(clock.ratio - trueRatio)).toBeLessThan(clock.halfWidth);
    expect(Math.abs(trueRatio - 1)).toBeGreaterThan(1e-5);
  });
  it('stops the motor when the page may not beat any more', async () => {
    let awake = true;
    const all = await bench(5, () => awake);
    const record = await all.run(async (on) => {
      await spin(on);
      awake = false;
      await on.wait(5);
    });
    expect(record.ending).toEqual({ kind: 'tripped', words: 'The host fell silent.' });
    expect(record.findings[0]).toMatchObject({ measured: false, reason: 'The host fell silent.' });
    expect(isOff(all)).toBe(true);
  });
  it('says exactly what a lost link means, and the rig goes safe without its host', async () => {
    const all = await bench(6);
    const record = await all.run(async (on) => {
      await spin(on);
      all.link.unplug();
      await on.wait(5);
    });
    expect(record.ending).toEqual({
      kind: 'link lost',
      words: 'Link lost. The state of the rig is unknown: disconnect the pack.',
    });
    all.rig.runForMs(4000);
    expect(isOff(all)).toBe(true);
  });
  it('tells the stop line, and runs again after the trip was cleared', async () => {
    const all = await bench(7);
    const record = await all.run(async (on) => {
      await spin(on);
      all.rig.pressStop(true);
      await on.wait(5);
    });
    expect(record.ending).toEqual({ kind: 'tripped', words: 'The stop line opened.' });
    await expect(all.session.clearTrip()).rejects.toThrow(/The stop line is open/);
    all.rig.pressStop(false);
    await all.run(async () => {});
    await all.session.clearTrip();
    expect((await all.run(spin)).ending.kind).toBe('done');
  });
  it('stops by hand within one beat of the host', async () => {
    const all = await bench(8);
    const stop = new AbortController();
    let pulseAt = Number.NaN;
    const record = await all.run(async (on) => {
      await spin(on);
      all.link.clock.after(100, () => stop.abort());
      all.link.clock.after(200, () => (pulseAt = all.plant.inputs.throttlePulseS ?? 0));
      await on.wait(20);
    }, stop.signal);
    expect(record.ending.kind).toBe('stopped');
    const neutralS = drawCar(8).car.controller.throttle.neutralUs * 1e-6;
    expect(Math.abs(pulseAt - neutralS)).toBeLessThan(15e-6);
    expect(isOff(all)).toBe(true);
  });
  it('gives the same bytes for the same seed', async () => {
    const first = await (await bench(9)).run((on) => on.powerUp(plan, 'rail'));
    const second = await (await bench(9)).run((on) => on.powerUp(plan, 'rail'));
    expect(first.raw.blocks).toBeGreaterThan(200);
    // Compared as one truth value: a difference of base64 columns is nothing to read.
    expect(JSON.stringify(first.raw) === JSON.stringify(second.raw)).toBe(true);
  });
});
