// SPDX-License-Identifier: MIT
// The committed firmware on the emulated board and the plant of a seed: it answers, streams what the plant has,
// and repeats byte for byte.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { encodeFrame } from '#protocol/frame';
import { FrameDecoder } from '#protocol/frame-decoder';
import { encodeMessage, isMessageFault, type Message, parseMessage } from '#protocol/messages';
import { SteadyPlant } from '../tests/support/steady-plant.ts';
import { drawCar } from './physics/population.ts';
import { createVirtualRig, type VirtualRig } from './virtual-rig.ts';
import type { TapName } from './wiring/rig-errors.ts';

const hex = readFileSync(new URL('../firmware-protocol/firmware/bench-marshal.hex', import.meta.url), 'utf8');
const makeRig = (seed: number, store?: Uint8Array): VirtualRig =>
  createVirtualRig({ hex, plant: drawCar(seed).plant, seed, store });
const say = (rig: VirtualRig, message: Message): void => rig.send(encodeFrame(encodeMessage(message)));

function listen(rig: VirtualRig): { bytes: number[]; messages: Message[] } {
  const heard = { bytes: [] as number[], messages: [] as Message[] };
  const decoder = new FrameDecoder();
  rig.onByte((byte) => {
    heard.bytes.push(byte);
    for (const result of decoder.push(Uint8Array.of(byte))) {
      if (!('payload' in result)) throw new Error(`bad frame: ${JSON.stringify(result)}`);
      const message = parseMessage(result.payload);
      if (isMessageFault(message)) throw new Error(`bad message: ${message.fault}`);
      heard.messages.push(message);
    }
  });
  return heard;
}
const of = <T extends Message['type']>(messages: readonly Message[], type: T) =>
  messages.filter((message): message is Extract<Message, { type: T }> => message.type === type);

describe('virtual rig', () => {
  it('answers hello with the reset cause, also after the port was opened', () => {
    const rig = makeRig(1);
    const heard = listen(rig);
    rig.runForMs(150);
    say(rig, { type: 'hello', id: 9, major: 1, minor: 0 });
    rig.runForMs(20);
    rig.reset();
    rig.runForMs(150);
    say(rig, { type: 'hello', id: 10, major: 1, minor: 0 });
    rig.runForMs(20);
    const answers = of(heard.messages, 'helloBack');
    // codes: 1 power on, 2 reset line
    expect(answers.map(({ id, resetCause }) => [id, resetCause])).toEqual([
      [9, 1],
      [10, 2],
    ]);
  });

  const streamOf = (seed: number) => {
    const rig = makeRig(seed);
    const heard = listen(rig);
    rig.runForMs(150);
    say(rig, { type: 'scanList', id: 1, fast: [0, 1, 4, 5], slow: 7 });
    say(rig, { type: 'stream', id: 2, on: 1 });
    rig.runForMs(400);
    return { rig, blocks: of(heard.messages, 'scanBlock').filter(({ fast }) => fast[3] === 5) };
  };

  it.each([2, 3, 4])('streams what the plant has, within the errors of its taps (seed %i)', (seed) => {
    const { rig, blocks } = streamOf(seed);
    expect(blocks.length).toBeGreaterThan(40);
    const { samples } = blocks.at(-1)!;
    const lsb = rig.errors.avccV / 1024;
    const { packV, packA, controllerV } = rig.plant.outputs();
    const truth = {
      packVoltage: packV,
      packCurrentNarrow: packA,
      controllerVoltage: controllerV,
      packCurrentWide: packA,
    };
    Object.entries(truth).forEach(([name, value], position) => {
      const tap = rig.errors.taps[name as TapName];
      const sum = Array.from({ length: 8 }, (_, scan) => samples[5 * scan + position]).reduce(
        (a, b) => a + b,
      );
      const expected = tap.zeroV + tap.offsetV + value * tap.voltsPerUnit * (1 + tap.gain);
      // Non-linearity of 1 LSB, and five times the noise of 16 conversions (0.6 LSB / 4).
      expect(Math.abs((sum / 16) * lsb - expected)).toBeLessThan((1 + 5 * 0.15) * lsb);
    });
  });

  it('turns the multiplexer through thermistors, reference and spare', () => {
    const { rig, blocks } = streamOf(5);
    const slow = Array.from({ length: 8 }, () => 0);
    for (const { samples, slowFirst } of blocks.slice(-16)) {
      for (let scan = 0; scan < 8; scan++) slow[(slowFirst + scan) & 7] += samples[5 * scan + 4] / 16;
    }
    const celsius = (code: number) => 1 / (1 / 298.15 + Math.log(code / (1024 - code)) / 3950) - 273.15;
    rig.plant.outputs().thermistorC.forEach((truth, n) => {
      // 1 % each of resistance, B value and pull-up at 25 C: 0.6 K at most by the B equation.
      expect(Math.abs(celsius(slow[n]) - truth!)).toBeLessThan(0.7);
    });
    expect(Math.abs(slow[4] - (rig.errors.referenceV / rig.errors.avccV) * 1024)).toBeLessThan(1.8);
    expect(slow[7]).toBeLessThan(1.5);
  });

  it('captures Hall edges at their true distance, to the tick, whatever the rig is doing', () => {
    const everyS = 0.4321e-3;
    const rig = createVirtualRig({ hex, plant: new SteadyPlant({}, everyS), seed: 6 });
    const heard = listen(rig);
    rig.runForMs(150);
    say(rig, { type: 'capture', id: 1, source: 0 });
    say(rig, { type: 'stream', id: 2, on: 1 });
    rig.runForMs(500);
    const distances = of(heard.messages, 'scanBlock')
      .slice(10)
      .flatMap(({ edges }) => [...edges]);
    const ticks = everyS * 2e6 * (1 + rig.errors.clock);
    expect(distances.length).toBeGreaterThan(900);
    for (const distance of distances) expect(Math.abs(distance - ticks)).toBeLessThan(1);
    const mean = distances.reduce((a, b) => a + b) / distances.length;
    expect(Math.abs(mean / ticks - 1)).toBeLessThan(1e-5);
  });

  it('comes back from a brown-out and says so', () => {
    const rig = makeRig(7);
    const heard = listen(rig);
    rig.runForMs(400);
    rig.brownOut(0.05);
    rig.runForMs(200);
    say(rig, { type: 'hello', id: 3, major: 1, minor: 0 });
    rig.runForMs(20);
    // code 3: brown-out
    expect(of(heard.messages, 'helloBack')[0].resetCause).toBe(3);
  });

  it('numbers scans without a gap and 936 us apart', () => {
    const rig = makeRig(3);
    const heard = listen(rig);
    rig.runForMs(150);
    say(rig, { type: 'stream', id: 1, on: 1 });
    rig.runForMs(1000);
    const blocks = of(heard.messages, 'scanBlock');
    const steps = blocks.slice(1).map(({ scan, tick }, i) => [scan - blocks[i].scan, tick - blocks[i].tick]);
    expect(new Set(steps.map(([scans]) => scans))).toEqual(new Set([8]));
    for (const [, ticks] of steps) expect(Math.abs(ticks - 8 * 1872)).toBeLessThanOrEqual(1);
  });

  it('repeats byte for byte with the same program and seed, whatever the slices', () => {
    const run = (sliceMs: number): number[] => {
      const rig = makeRig(4);
      const heard = listen(rig);
      rig.runUntilCycle(0.15 * 16e6);
      say(rig, { type: 'stream', id: 1, on: 1 });
      while (rig.cycles < 0.5 * 16e6) rig.runUntilCycle(Math.min(rig.cycles + sliceMs * 16e3, 0.5 * 16e6));
      return heard.bytes;
    };
    const once = run(2);
    expect(once.length).toBeGreaterThan(4000);
    expect(run(2)).toEqual(once);
    expect(run(0.37)).toEqual(once);
  });

  it('differs for another seed', () => {
    const bytes = (seed: number) => {
      const rig = makeRig(seed);
      const heard = listen(rig);
      rig.runForMs(150);
      say(rig, { type: 'stream', id: 1, on: 1 });
      rig.runForMs(100);
      return heard.bytes;
    };
    expect(bytes(5)).not.toEqual(bytes(6));
  });

  it('keeps its store over power-off by export and import, and refuses one of the wrong size', () => {
    const store = new Uint8Array(1024).fill(0xff);
    store[7] = 42;
    expect(makeRig(1, store).exportStore()[7]).toBe(42);
    expect(() => makeRig(1, new Uint8Array(10))).toThrow(/1024 bytes, not 10/);
  });

  it('says which line of a damaged program is wrong', () => {
    const damaged = hex.split('\n');
    damaged[10] = damaged[10].slice(0, 20);
    const plant = drawCar(1).plant;
    expect(() => createVirtualRig({ hex: damaged.join('\n'), plant, seed: 1 })).toThrow(/line 11/);
    expect(() => createVirtualRig({ hex: hex.slice(0, 3000), plant, seed: 1 })).toThrow(/line|cut off/);
  });
});
