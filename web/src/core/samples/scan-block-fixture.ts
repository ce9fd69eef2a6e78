// SPDX-License-Identifier: MIT
// For tests: a rig of declared taps and blocks of chosen codes. The taps' figures are those of the reference
// board's design: 10 V dividers of 2:1, current amplifiers with a lifted zero, 10 kohm thermistors.
import type { RigDescription, Store, Tap } from './rig-description.ts';
import type { ScanBlock } from './scan-block.ts';

const linear = (
  id: string,
  channel: number,
  quantity: 'voltage' | 'current',
  [zeroV, unitsPerV]: [number, number],
  [low, high]: [number, number],
  error: Tap['error'],
  cornerHz = 340,
): Tap => ({
  id,
  channel,
  quantity,
  unit: quantity === 'voltage' ? 'V' : 'A',
  scale: { kind: 'linear', zeroV, unitsPerV },
  low,
  high,
  cornerHz,
  error,
});
const divider: Tap['error'] = { gain: 0.005, offset: 0.02, drift: 0.005, inlLsb: 1, noiseLsb: 0.6 };
const shunt = (offset: number, drift: number): Tap['error'] => ({
  gain: 0.015,
  offset,
  drift,
  inlLsb: 1,
  noiseLsb: 0.6,
});
const thermistor = (id: string, mux: number): Tap => ({
  id,
  channel: 7,
  mux,
  quantity: 'temperature',
  unit: 'C',
  scale: { kind: 'ntc', pullUpOhm: 10000, r25Ohm: 10000, betaK: 3950 },
  low: -20,
  high: 125,
  cornerHz: 50,
  error: { gain: 0, offset: 0.6, drift: 0, inlLsb: 1, noiseLsb: 0.6 },
});
const selected = (
  id: string,
  mux: number,
  scale: [number, number],
  range: [number, number],
  error: Tap['error'],
): Tap => ({ ...linear(id, 7, 'voltage', scale, range, error), mux });
const taps: readonly Tap[] = [
  linear('packVoltage', 0, 'voltage', [0, 2], [0, 10], divider),
  linear('packCurrentNarrow', 1, 'current', [0.8, 2.5], [-2, 10], shunt(0.05, 0.005)),
  linear('railVoltage', 2, 'voltage', [0, 2], [0, 10], divider, 3400),
  linear('railCurrent', 3, 'current', [0.5, 2], [-1, 9], shunt(0.03, 0.003), 3400),
  linear('controllerVoltage', 4, 'voltage', [0, 2], [0, 10], divider),
  linear('packCurrentWide', 5, 'current', [0.75, 40], [-30, 150], shunt(0.5, 0.05)),
  thermistor('thermistorMotor', 0),
  thermistor('thermistorServo', 1),
  thermistor('thermistorController', 2),
  thermistor('thermistorAmbient', 3),
  selected('midCell', 5, [0, 1], [0, 5], { ...divider, offset: 0.01, drift: 0.0025 }),
  selected('polarity', 6, [2.5, 6], [-15, 15], { ...divider, gain: 0.01, offset: 0.06, drift: 0.015 }),
];
export function testRig(store: Partial<Store> = {}, without: readonly string[] = []): RigDescription {
  return {
    descriptor: {
      board: 'test board',
      variant: '2S',
      firmware: '0.0.0',
      reference: { volts: 2.5, tolerance: 0.002, mux: 4 },
      nominalSupplyV: 5,
      clockTolerance: 0.005,
      tickS: 0.5e-6,
      conversionTicks: 208,
      scansPerBlock: 8,
      taps: taps.filter((tap) => !without.includes(tap.id)),
      outputs: [],
      loadsOhm: [10, 4.7, 2.2],
      limitedFeedOhm: 10,
    },
    store: { serial: 'T1', name: 'test', calibration: [], ...store },
  };
}
interface Wanted extends Partial<ScanBlock> {
  /** Codes of one conversion for the four fast slots, 400 where not given. */
  readonly codes?: Partial<Record<'a' | 'b' | 'c' | 'd', number>>;
  /** Codes of the multiplexer's inputs. */
  readonly mux?: Readonly<Record<number, number>>;
  readonly reference?: number;
}
export function scanBlock(wanted: Wanted = {}): ScanBlock {
  const { codes = {}, mux = {}, reference = 512, ...fields } = wanted;
  const slowFirst = fields.slowFirst ?? 0;
  const fastCodes = [codes.a ?? 400, codes.b ?? 400, codes.c ?? 400, codes.d ?? 400];
  const samples = new Uint16Array(40);
  for (let scan = 0; scan < 8; scan++) {
    fastCodes.forEach((code, slot) => (samples[scan * 5 + slot] = Math.round(code * 2)));
    const input = (slowFirst + scan) & 7;
    samples[scan * 5 + 4] = input === 4 ? reference : (mux[input] ?? 400);
  }
  const counters = { edgesA: 0, edgesB: 0, edgesC: 0, badHall: 0, lastEdge: 0 };
  const quiet = { state: 0, trip: 0, outputs: 0, steering: 0, throttle: 0, slow: 7, fast: [0, 1, 2, 3] };
  return {
    scan: 0,
    tick: 0,
    ...quiet,
    ...counters,
    edges: new Uint16Array(0),
    samples,
    ...fields,
    slowFirst,
    ...asWords(fields),
  };
}
const asWords = (fields: Partial<ScanBlock>) =>
  fields.edges ? { edges: Uint16Array.from(fields.edges) } : {};
