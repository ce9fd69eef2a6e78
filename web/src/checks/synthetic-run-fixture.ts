// SPDX-License-Identifier: MIT
// For tests: a run made from functions of time instead of a rig. Each tap's value is turned into noisy converter
// codes by the tap's declared scale, Hall edges come at a given rate; blocks can be left out. No error of the rig
// is added, so that an analysis must give the functions back within its interval.
import type { Car } from '#core/parts/part';
import type { RigDescription, Tap } from '#core/samples/rig-description';
import { testRig } from '#core/samples/scan-block-fixture';
import { ScanColumns } from '#core/samples/scan-columns';

export interface Signals {
  /** Value of a tap at a time; undefined reads as 0. */
  readonly tap: (id: string, timeS: number) => number | undefined;
  /** Captured edges a second. */
  readonly edgesPerS?: (timeS: number) => number;
  /** Or the very times at which edges come, rising. */
  readonly edgesAtS?: readonly number[];
  readonly feedOnS: number;
  readonly endS: number;
  readonly fast: readonly [string, string, string, string];
  /** Commanded width of the steering; 1500 without. */
  readonly steeringUs?: (timeS: number) => number;
  /** Blocks that the link loses. */
  readonly lost?: (timeS: number) => boolean;
}
const supplyV = 4.9;
const tickS = 0.5e-6;
const scanTicks = 1872;
const feedFull = 1 << 4;
const noiseLsb = 0.6;

export const marmot: Car = {
  name: 'Marmot',
  motor: {
    kind: 'motor',
    name: 'Marmot 13.5T',
    turns: 13.5,
    polePairs: 1,
    sensored: true,
    ratedKvRpmPerV: 3000,
    ratedKvTolerance: 0.07,
    ratedSpeedRpm: 50000,
    ratedNoLoadA: 3,
  },
  servo: {
    kind: 'servo',
    name: 'Marmot steering',
    digital: true,
    ratedVoltageV: 6,
    ratedStallA: 3,
    ratedStallTolerance: 0.2,
    degreesPerUs: 0.1,
  },
  controller: {
    kind: 'controller',
    name: 'Lantern 90 speed controller',
    railSettingV: 6,
    railFloorV: 4,
    throttle: { lowUs: 1080, neutralUs: 1500, highUs: 1920 },
  },
  pack: { kind: 'pack', name: 'Quarry 2S', cells: 2, chemistry: 'lipo', capacityAh: 5 },
};

export function syntheticRun(signals: Signals, rig: RigDescription = testRig()): ScanColumns {
  const columns = new ScanColumns(rig);
  const encode = encoder(rig);
  const train = signals.edgesAtS ? givenEdges(signals.edgesAtS) : edgeMaker(signals);
  for (let scan = 0; scan * scanTicks * tickS < signals.endS; scan += 8) {
    const tick = scan * scanTicks;
    const timeS = tick * tickS;
    const edges = train(tick + 8 * scanTicks);
    if (signals.lost?.(timeS)) continue;
    columns.push({
      scan,
      tick,
      fast: signals.fast.map((id) => tapOf(rig, id).channel),
      slow: 7,
      slowFirst: 0,
      state: 1,
      trip: 0,
      outputs: timeS >= signals.feedOnS ? feedFull : 0,
      steering: Math.round(2 * (signals.steeringUs?.(timeS) ?? 1500)),
      throttle: 3000,
      edgesB: 0,
      edgesC: 0,
      badHall: 0,
      ...edges,
      samples: samplesOf(signals, rig, encode, tick),
    });
  }
  return columns;
}
type Encode = (tap: Tap, value: number) => number;

/** Codes of eight scans from `tick` on; asks for the values in the order of conversion. Used by tests/support/servo-bench
 *  as well. */
export function samplesOf(
  signals: Pick<Signals, 'tap' | 'fast'>,
  rig: RigDescription,
  encode: Encode,
  tick: number,
): Uint16Array {
  const samples = new Uint16Array(40);
  for (let scan = 0; scan < 8; scan++) {
    const startS = (tick + scan * scanTicks) * tickS;
    signals.fast.forEach((id, slot) => {
      const tap = tapOf(rig, id);
      const value = signals.tap(id, startS + (slot < 2 ? 168e-6 : 584e-6)) ?? 0;
      samples[scan * 5 + slot] = encode(tap, value) + encode(tap, value);
    });
    const slow = rig.descriptor.taps.find(({ channel, mux }) => channel === 7 && mux === scan);
    samples[scan * 5 + 4] =
      scan === 4 ? referenceCode() : slow ? encode(slow, signals.tap(slow.id, startS) ?? 25) : 0;
  }
  return samples;
}
const referenceCode = (): number => Math.round((2.5 * 1024) / supplyV);

export function encoder(_rig: RigDescription): Encode {
  const next = gaussian(17);
  return ({ scale }, value) => {
    const fraction =
      scale.kind === 'linear'
        ? (value / scale.unitsPerV + scale.zeroV) / supplyV
        : thermistorFraction(scale, value);
    return Math.min(1023, Math.max(0, Math.round(fraction * 1024 + noiseLsb * next())));
  };
}
function thermistorFraction(
  { pullUpOhm, r25Ohm, betaK }: { pullUpOhm: number; r25Ohm: number; betaK: number },
  c: number,
): number {
  const ohm = r25Ohm * Math.exp(betaK * (1 / (c + 273.15) - 1 / 298.15));
  return ohm / (ohm + pullUpOhm);
}
/** Edges up to a tick, in the form a block tells them. */
function edgeMaker({ edgesPerS = () => 0 }: Signals) {
  let at = 0;
  let phase = 0;
  let count = 0;
  let last = 0;
  const step = 4;
  return (untilTick: number) => {
    const edges: number[] = [];
    for (; at < untilTick; at += step) {
      phase += edgesPerS(at * tickS) * step * tickS;
      if (phase < 1) continue;
      phase -= 1;
      edges.push(Math.min(65535, at - last));
      last = at;
      count++;
    }
    return { edges: Uint16Array.from(edges), lastEdge: last, edgesA: count & 0xffff };
  };
}
/** The same of edges at given times, stamped in whole ticks. */
function givenEdges(timesS: readonly number[]) {
  let next = 0;
  let last = 0;
  return (untilTick: number) => {
    const edges: number[] = [];
    for (; next < timesS.length && Math.floor(timesS[next] / tickS) < untilTick; next++) {
      const tick = Math.floor(timesS[next] / tickS);
      edges.push(Math.min(65535, tick - last));
      last = tick;
    }
    return { edges: Uint16Array.from(edges), lastEdge: last, edgesA: next & 0xffff };
  };
}
const tapOf = (rig: RigDescription, id: string): Tap => {
  const tap = rig.descriptor.taps.find((known) => known.id === id);
  return tap ?? { ...rig.descriptor.taps[0], id, channel: 6 };
};
/** Lehmer generator (48271 mod 2^31 - 1) and Box-Muller: the same noise each time. */
export function gaussian(seed: number): () => number {
  let state = seed;
  const unit = () => (state = (state * 48271) % 2147483647) / 2147483647;
  return () => Math.sqrt(-2 * Math.log(unit())) * Math.cos(2 * Math.PI * unit());
}
