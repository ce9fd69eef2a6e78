// SPDX-License-Identifier: MIT
import { describe, expect, it } from 'vitest';
import { eventCode, outputBitCode, reasonCode, tripCode } from '#protocol/codes';
import type { Progress } from '#checks/check';
import { readRecord, writeRecord } from '#core/record/record-reader';
import { runCheck, type FinishedRun } from './check-runner.ts';
import { run, type Procedure } from './run-fixture.ts';
import { car, connected, label, plan, toyCheck } from './session-fixture.ts';

const driven: Procedure = async (bench) => {
  await bench.powerUp(plan);
  await bench.throttle(0.2, 0.3);
  await bench.wait(2);
  await bench.throttle(0, 0.2);
  return { until: bench.now() };
};
const expectUnmeasured = ({ record }: FinishedRun, kind: string, words: RegExp | string) => {
  expect(record.ending.kind).toBe(kind);
  if (typeof words === 'string') expect(record.ending.words).toBe(words);
  else expect(record.ending.words).toMatch(words);
  expect(record.findings).toMatchObject([{ id: 'rail', measured: false, reason: record.ending.words }]);
  expect(record.verdict).toBe('not measured');
};

describe('a run that goes well', () => {
  it('powers up in order, judges, ends safe, and makes a record that reads back', async () => {
    const all = await connected();
    const { record } = await run(all, driven);
    expect(record.ending.kind).toBe('done');
    expect(record.verdict).toBe('pass');
    expect(all.session.state.kind).toBe('ready');
    const order = all.rig.received
      .map(({ type }) => type)
      .filter((type) => ['stream', 'goLive', 'feed', 'drive', 'safeAll'].includes(type));
    expect(order.indexOf('stream')).toBeLessThan(order.indexOf('goLive'));
    expect(order.indexOf('goLive')).toBeLessThan(order.indexOf('feed'));
    expect(order.lastIndexOf('feed')).toBeLessThan(order.indexOf('drive'));
    expect(order.at(-1)).toBe('safeAll');
    expect(all.rig.sentOf('feed').map(({ level }) => level)).toEqual([1, 2]);
    expect(readRecord(writeRecord(record)).raw.blocks).toBe(record.raw.blocks);
    expect(record.evidence).toMatchObject({ until: expect.any(Number) as number });
    expect(record.clock.origin).toBe('fit');
    expect(record.clock.ratio).toBeCloseTo(1, 3);
  });
  it('beats while it only streams, so that the second of the rig is known, and goes live as ever after', async () => {
    const check = toyCheck(async (bench) => {
      await bench.stream(plan);
      await bench.wait(3);
      return {};
    });
    const all = await connected();
    await all.clock.settle(runCheck(all.session, check, { car, label, ask: async () => {} }));
    expect(all.rig.sentOf('beat').length).toBeGreaterThan(100);
    expect(all.rig.sentOf('beat').every(({ session }) => session === 0)).toBe(true);
    expect(all.rig.sentOf('goLive')).toEqual([]);
    expect(all.session.rigClock.fit.origin).toBe('fit');
    expect(all.session.beats.beating).toBe(false);
  });
  it('beats every 20 ms from going live until the rig is safe', async () => {
    const all = await connected();
    await run(all, driven);
    const { sent, answered } = all.session.beats;
    expect(answered).toBe(sent);
    expect(all.session.beats.beating).toBe(false);
    expect(all.rig.sentOf('beat').every(({ session }) => session === 0xc0ffee)).toBe(true);
  });
  it('keeps the zero of the current taps: half a second of them with everything off', async () => {
    const all = await connected();
    await run(all, driven);
    const lists = all.rig.sentOf('scanList');
    expect(Array.from(lists[0].fast)).toEqual([1, 3, 5, 0]);
    expect(Array.from(lists.at(-1)!.fast)).toEqual([0, 1, 2, 5]);
  });
  it('sends the limits of this car: rated speed as ticks between edges', async () => {
    const all = await connected();
    await run(all, driven);
    const speed = all.rig.sentOf('limit').find(({ which }) => which === 5);
    // 50,000 rpm with one pole pair: 1666.7 edges a second, 1200 ticks of 0.5 us apart (computed by hand).
    expect(speed?.level).toBe(1200);
    const throttle = all.rig.sentOf('driveLimits').find(({ output }) => output === 1);
    expect(throttle).toMatchObject({ low: 2000, rest: 3000, high: 4000 });
  });
  it('opens the throttle by steps of at most 2 % until edges come, and renews drives within their second', async () => {
    const all = await connected();
    await run(all, driven);
    const drives = all.rig.sentOf('drive').filter(({ output }) => output === 1);
    expect(drives[0].width - 3000).toBeLessThanOrEqual(20);
    expect(drives.filter(({ width }) => width === 3200).length).toBeGreaterThanOrEqual(6);
  });
  it('tells its progress and asks for the stop', async () => {
    const told: Progress[] = [];
    await run(await connected(), driven, { progress: (progress) => told.push(progress) });
    expect(told.map(({ words }) => words).join(' ')).toMatch(/Press the stop once/);
  });
});

describe('a run that does not', () => {
  it('a tap the rig lacks: not measured, nothing powered', async () => {
    const all = await connected();
    const check = toyCheck(driven, { needs: { taps: ['phaseVoltage'], outputs: [] } });
    const finished = await all.clock.settle(
      runCheck(all.session, check, { car, label, ask: () => Promise.resolve() }),
    );
    expectUnmeasured(finished, 'failed', /lacks the tap phaseVoltage\. Use a rig that has it/);
    expect(all.rig.sentOf('goLive')).toHaveLength(0);
  });
  it('a command refused: the words of the reason, and safe again', async () => {
    const all = await connected();
    all.rig.script = (message) =>
      message.type === 'feed' && message.level === 1
        ? [{ type: 'nak', id: message.id, command: 11, reason: reasonCode.polarity, detail: 300 }]
        : undefined;
    expectUnmeasured(await run(all, driven), 'failed', /refused "feed": The pack is reversed or missing\./);
    expect(all.rig.sentOf('safeAll')).toHaveLength(1);
    expect(all.session.state.kind).toBe('ready');
  });
  it('no answer: the command is named', async () => {
    const all = await connected();
    all.rig.script = (message) => (message.type === 'feed' ? [] : undefined);
    expectUnmeasured(await run(all, driven), 'failed', /did not answer "feed" within 300 ms/);
  });
  it('a trip: its words, results not measured, and a new run only after it was cleared', async () => {
    const all = await connected();
    const finished = await run(all, async (bench) => {
      await bench.powerUp(plan);
      all.clock.after(500, () => all.rig.trip(tripCode.stopLine));
      await bench.wait(5);
    });
    expectUnmeasured(finished, 'tripped', 'The stop line opened.');
    expectUnmeasured(await run(all, driven), 'tripped', 'The stop line opened.');
    await all.clock.settle(all.session.clearTrip());
    expect((await run(all, driven)).record.ending.kind).toBe('done');
  });
  it('a link that is lost: exactly the words', async () => {
    const all = await connected();
    const finished = await run(all, async (bench) => {
      await bench.powerUp(plan);
      all.clock.after(500, () => all.rig.unplug());
      await bench.wait(5);
    });
    expectUnmeasured(
      finished,
      'link lost',
      'Link lost. The state of the rig is unknown: disconnect the pack.',
    );
    expect(all.session.state.kind).toBe('lost');
  });
  it('a stream that falls silent with the port still open counts as a lost link', async () => {
    const all = await connected();
    const finished = await run(all, async (bench) => {
      await bench.powerUp(plan);
      all.rig.script = () => [];
      await all.rig.close();
      await bench.wait(5);
    });
    expectUnmeasured(
      finished,
      'link lost',
      'Link lost. The state of the rig is unknown: disconnect the pack.',
    );
  });
  it('stopped by hand: told as an event, safe at once', async () => {
    const all = await connected();
    const stop = new AbortController();
    const finished = await run(
      all,
      async (bench) => {
        await bench.powerUp(plan);
        all.clock.after(300, () => stop.abort());
        await bench.wait(60);
      },
      { signal: stop.signal },
    );
    expectUnmeasured(finished, 'stopped', 'The run was stopped by hand.');
    expect(all.session.state.kind).toBe('ready');
  });
  it('a frozen page: no beat leaves while mayBeat is false', async () => {
    let awake = true;
    const all = await connected(() => awake);
    let beats = 0;
    const finished = await run(all, async (bench) => {
      await bench.powerUp(plan);
      awake = false;
      beats = all.rig.sentOf('beat').length;
      all.clock.after(100, () => all.rig.trip(tripCode.hostLost));
      await bench.wait(5);
    });
    expectUnmeasured(finished, 'tripped', 'The host fell silent.');
    expect(all.rig.sentOf('beat')).toHaveLength(beats);
    expect(all.session.beats.withheld).toBeGreaterThan(3);
  });
  it('a drive that ended by itself although it was wanted', async () => {
    const all = await connected();
    const finished = await run(all, async (bench) => {
      await bench.powerUp(plan);
      await bench.steer(1700, 0);
      all.rig.tell(all.rig.event(eventCode.driveEnded, 0));
      await bench.wait(5);
    });
    expectUnmeasured(finished, 'failed', /drive of the steering ended by itself/);
  });
  it('no Hall edge: said before the rig has to trip', async () => {
    const all = await connected();
    all.rig.script = (message) =>
      message.type === 'drive' ? [{ type: 'ack', id: message.id, command: 9 }] : undefined;
    expectUnmeasured(await run(all, driven), 'failed', /No Hall edge came at 14 % throttle/);
  });
  it('an open thermistor: named before anything is powered', async () => {
    const all = await connected();
    all.rig.block = { ...all.rig.block, mux: { 0: 1023 } };
    expectUnmeasured(await run(all, driven), 'failed', /thermistor "motor can" is open/);
    expect(all.rig.sentOf('goLive')).toHaveLength(0);
  });
  it('a stop that nobody presses', async () => {
    const all = await connected();
    all.rig.outputs = 1 << outputBitCode.askStop;
    const finished = await all.clock.settle(
      runCheck(all.session, toyCheck(driven), { car, label, ask: () => Promise.resolve() }),
      200_000,
    );
    expectUnmeasured(finished, 'failed', /stop was not pressed/);
  });
  it('a fault of the program is told as one, and the rig is safe all the same', async () => {
    const all = await connected();
    const finished = await run(all, async (bench) => {
      await bench.powerUp(plan);
      throw new TypeError('x is not a function');
    });
    expectUnmeasured(finished, 'failed', /fault of this program: x is not a function/);
    expect(all.session.state.kind).toBe('ready');
  });
});
