// SPDX-License-Identifier: MIT
// Safety of the real firmware, measured at the emulated pins: silence, stop, over-current, the safe order, what
// must not move before it may. Times are true time; figures are printed.
import { beforeAll, describe, expect, it } from 'vitest';
import { benchInProcess, trueWait, type BenchInProcess } from '../support/bench-in-process.ts';
import { PinLog } from '../support/pin-log.ts';
import { plan, spinning } from '../support/spinning-bench.ts';

const frameS = 0.02;
const feedFull = 2;
const ms = (seconds: number) => `${(seconds * 1e3).toFixed(2)} ms`;
const say = (words: string) => process.stdout.write(`${words}\n`);

const neutralUs = (on: BenchInProcess) => on.car.controller.throttle.neutralUs;
/** Tick of 0.5 us, and the resonator's 0.5 %. */
const near = (widthUs: number, wantedUs: number) => Math.abs(widthUs - wantedUs) < 0.006 * wantedUs + 1;

describe('silence of the host', () => {
  let on: BenchInProcess;
  let pins: PinLog;
  let silentS: number;
  beforeAll(async () => {
    ({ on, pins } = await spinning(3, 0.5));
    on.watched = false;
    silentS = on.rig.nowS;
    await trueWait(on, 3200);
  });
  it('brings the throttle to neutral within 100 ms and one servo frame of the last beat', () => {
    const driven = pins.pulsesOf('throttle', silentS).filter((p) => !near(p.widthUs, neutralUs(on)));
    const lastS = driven.at(-1)?.endS ?? silentS;
    say(`last driven pulse ${ms(lastS - silentS)} after the beats stopped`);
    expect(driven.length).toBeGreaterThan(0);
    expect(lastS - silentS).toBeLessThan(0.1 + frameS + 0.001);
  });
  it('keeps the order: neutral, then feed off, then no pulses, not before 2 s', () => {
    const neutralS = pins.pulsesOf('throttle', silentS).find((p) => near(p.widthUs, neutralUs(on)))!.endS;
    const feedOffS = pins.outputsFrom(silentS).find(({ feed }) => feed === 0)!.atS;
    const lastPulseS = pins.pulsesOf('throttle', silentS).at(-1)!.endS;
    say(
      `neutral ${ms(neutralS - silentS)}, feed off ${ms(feedOffS - silentS)}, last pulse ${ms(lastPulseS - silentS)}`,
    );
    expect(feedOffS).toBeGreaterThan(neutralS);
    expect(feedOffS - silentS).toBeLessThan(0.1 + 1.5 + 0.03);
    expect(lastPulseS - silentS).toBeGreaterThan(2);
    expect(lastPulseS).toBeLessThan(on.rig.nowS - 0.5);
  });
  it('latches and tells the trip', () => {
    expect(on.session.state).toMatchObject({ kind: 'tripped' });
    expect(JSON.stringify(on.session.state)).toContain('host');
  });
  it('never made a pulse shorter than 800 us or longer than 2200 us', () => {
    const widths = pins.pulses.map(({ widthUs }) => widthUs);
    expect(Math.min(...widths)).toBeGreaterThan(796);
    expect(Math.max(...widths)).toBeLessThan(2211);
  });
});

describe('a drive nobody renews', () => {
  it('ends by itself within its hold and one frame while beats go on', async () => {
    const { on, pins } = await spinning(4, 0.25);
    const { highUs, neutralUs: rest } = on.car.controller.throttle;
    on.session.drives.release('throttle');
    const width = Math.round((rest + 0.25 * (highUs - rest)) * 2);
    await on.session.ask({ type: 'drive', output: 1, width, rampMs: 0, holdMs: 400 });
    const fromS = on.rig.nowS;
    await trueWait(on, 900);
    const driven = pins.pulsesOf('throttle', fromS).filter((p) => !near(p.widthUs, rest));
    say(`drive of 400 ms ended ${ms(driven.at(-1)!.endS - fromS)} after its answer`);
    expect(driven.at(-1)!.endS - fromS).toBeGreaterThan(0.3);
    expect(driven.at(-1)!.endS - fromS).toBeLessThan(0.4 + frameS + 0.005);
    expect(on.session.state.kind).toBe('live');
  });
});

describe('a motor that coasts', () => {
  it('keeps its feed whatever is commanded, and loses it once it is slow', async () => {
    const { on, pins } = await spinning(4, 0.8);
    await on.bench.throttle(0, 0);
    const fromS = on.rig.nowS;
    await expect(on.session.ask({ type: 'capture', source: 3 })).rejects.toThrow(/turning/);
    await expect(on.session.ask({ type: 'feed', level: 0 })).rejects.toThrow(/turning/);
    await expect(on.session.ask({ type: 'feed', level: 1 })).rejects.toThrow(/turning/);
    let edges = -1;
    const edgesSeenS: number[] = [];
    const end = on.session.blocks.add((block) => {
      if (edges >= 0 && block.edgesA !== edges) edgesSeenS.push(on.rig.nowS);
      edges = block.edgesA;
    });
    await on.session.ask({ type: 'safeAll' });
    await trueWait(on, 1700);
    end();
    const offS = pins.outputsFrom(fromS).find(({ feed }) => feed === 0)!.atS;
    // A slow rotor turns on after that: what counts is the time without an edge before the feed opened.
    const lastEdgeS = edgesSeenS.findLast((atS) => atS <= offS) ?? Number.NaN;
    say(`feed off ${ms(offS - fromS)} after neutral, last block with an edge ${ms(lastEdgeS - fromS)}`);
    expect(lastEdgeS).toBeGreaterThan(fromS);
    expect(offS - fromS).toBeLessThan(1.5 + 0.1);
    // Before its 1.5 s only when 30 ms have passed without an edge; a block tells of one up to 10 ms later.
    if (offS - fromS < 1.5) expect(offS - lastEdgeS).toBeGreaterThan(0.03 - 0.01);
  });
});

describe('stop line and over-current', () => {
  async function loaded(seed: number) {
    const on = await benchInProcess(seed);
    const pins = new PinLog(on.rig);
    await on.bench.powerUp(plan);
    await on.bench.wait(3);
    return { on, pins };
  }
  const loadsOff = (pins: PinLog, fromS: number) => pins.outputsFrom(fromS).find(({ loads }) => loads === 0);

  it('the stop line takes the loads off within 5 ms and trips', async () => {
    const { on, pins } = await loaded(5);
    await on.bench.load(7, 0.5);
    await trueWait(on, 50);
    const pressedS = on.rig.nowS;
    on.rig.pressStop(true);
    await trueWait(on, 40);
    say(`loads off ${ms(loadsOff(pins, pressedS)!.atS - pressedS)} after the stop line opened`);
    expect(loadsOff(pins, pressedS)!.atS - pressedS).toBeLessThan(0.005);
    expect(on.session.state.kind).toBe('tripped');
  });
  it('a current beyond the short-circuit limit acts within 5 ms', async () => {
    const { on, pins } = await loaded(6);
    await on.bench.limit('packWideFast', 2, 0);
    void on.session.ask({ type: 'load', mask: 7, ms: 500 }).catch(() => {});
    await trueWait(on, 100);
    const onS = pins.outputs.find(({ loads }) => loads === 7)!.atS;
    const offS = loadsOff(pins, onS + 1e-6)!.atS;
    say(`loads off ${ms(offS - onS)} after the load drew more than the limit`);
    expect(offS - onS).toBeLessThan(0.005);
    expect(JSON.stringify(on.session.state)).toContain('short');
  });
});

describe('before its go-live conditions hold', () => {
  it('nothing moves: no pulse, no load, no feed, and every refusal has its reason', async () => {
    const on = await benchInProcess(7, { 'stop-line-open': 0 });
    const pins = new PinLog(on.rig);
    const refusals = [
      { type: 'drive', output: 1, width: 3000, rampMs: 0, holdMs: 500 },
      { type: 'load', mask: 1, ms: 100 },
      { type: 'feed', level: 1 },
      { type: 'feed', level: 2 },
      { type: 'goLive', session: 1 },
    ] as const;
    for (const command of refusals) await expect(on.session.ask(command)).rejects.toThrow();
    await trueWait(on, 500);
    expect(pins.pulses).toEqual([]);
    expect(pins.outputs.filter(({ loads, feed }) => loads !== 0 || feed !== 0)).toEqual([]);
  });
  it('a live rig refuses the full feed before the limited one, and throttle before neutral has run', async () => {
    const on = await benchInProcess(8);
    const pins = new PinLog(on.rig);
    await on.bench.scan({
      fast: ['packVoltage', 'controllerVoltage', 'railVoltage', 'packCurrentWide'],
      slow: 'multiplexer',
    });
    await on.bench.command({ type: 'stream', on: 1 });
    await trueWait(on, 900);
    await on.session.goLive();
    await expect(on.session.ask({ type: 'feed', level: 2 })).rejects.toThrow(/limited feed/);
    const driven = { type: 'drive', output: 1, width: 3100, rampMs: 0, holdMs: 500 } as const;
    await expect(on.session.ask(driven)).rejects.toThrow();
    await trueWait(on, 200);
    expect(pins.outputs.filter(({ feed }) => feed === feedFull)).toEqual([]);
    expect(pins.pulsesOf('throttle').filter((p) => !near(p.widthUs, 1500))).toEqual([]);
  });
});
