// SPDX-License-Identifier: MIT
// A made-up free servo: slow sweeps whose current depends on where the pulse stands, fast moves with an inrush and an
// even current, either way. The analysis must give the figures back and find the place that is tight.
import { describe, expect, it } from 'vitest';
import type { Measured } from '#core/measurements/measurement';
import { testRig } from '#core/samples/scan-block-fixture';
import { marmot, syntheticRun, type Signals } from '../synthetic-run-fixture.ts';
import { analyse } from './analysis.ts';
import type { Evidence } from './evidence.ts';

const idleA = 0.012;
const sweepS = 4;
const sweeps = [true, false].map((longer, k) => ({
  longer,
  stretch: { fromS: 3 + k * sweepS, toS: 3 + (k + 1) * sweepS },
}));
const movesFromS = 3 + 2 * sweepS;
const everyS = 0.6;
const moves = Array.from({ length: 6 }, (_, k) => ({
  longer: k % 2 === 0,
  stretch: { fromS: movesFromS + k * everyS, toS: movesFromS + (k + 1) * everyS },
}));
const evidence: Evidence = { idle: { fromS: 2, toS: 2.8 }, sweeps, moves };

function steeringUs(timeS: number): number {
  const at = (timeS - 3) / sweepS;
  if (at < 0) return 1100;
  return at < 1 ? 1100 + 800 * at : Math.max(1100, 1900 - 800 * (at - 1));
}
interface Servo {
  readonly upA: number;
  readonly downA: number;
  /** Current of the sweep above rest, by pulse width. */
  readonly sweepA: (widthUs: number) => number;
}
const healthy: Servo = { upA: 0.2, downA: 0.2, sweepA: () => 0.012 };
function amps(timeS: number, { upA, downA, sweepA }: Servo): number {
  if (timeS < 3) return idleA;
  if (timeS < movesFromS) return idleA + sweepA(steeringUs(timeS));
  const k = Math.floor((timeS - movesFromS) / everyS);
  const sinceS = timeS - movesFromS - k * everyS - 0.02;
  if (sinceS < 0 || sinceS > 0.18) return idleA;
  return idleA + (k % 2 === 0 ? upA : downA) + 2 * Math.exp(-sinceS / 0.004);
}
function run(servo: Servo = healthy, change: Partial<Signals> = {}) {
  return syntheticRun({
    tap: (id, timeS) => {
      if (timeS < 1) return id.startsWith('thermistor') ? 25 : 0;
      if (id === 'railVoltage') return 5.9;
      return id === 'railCurrent' ? amps(timeS, servo) : 0;
    },
    steeringUs,
    feedOnS: 1,
    endS: movesFromS + 6 * everyS + 0.1,
    fast: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'],
    ...change,
  });
}
const found = (samples: ReturnType<typeof run>, kept = evidence) =>
  analyse({ evidence: kept, samples, rig: testRig(), car: marmot });
const reason = (finding: ReturnType<typeof found>[number]) =>
  finding.measured ? `measured ${finding.value}` : finding.reason;
const covers = ({ interval: [low, high] }: Measured, value: number) => low <= value && value <= high;

describe('servo-no-load analysis', () => {
  const [moving, difference, sweep, tight] = found(run()) as Measured[];
  it('gives the moving current back, what the electronics take in it', () => {
    expect(covers(moving, 0.2 + idleA)).toBe(true);
    expect(Math.abs(moving.value - 0.212)).toBeLessThan(0.002);
  });
  it('finds both directions alike, and no place tighter than others', () => {
    expect(difference.value).toBeLessThan(1);
    expect(covers(tight, 1)).toBe(true);
    expect(tight.interval[1]).toBeLessThan(2);
  });
  it('gives the current of the sweep back', () => expect(covers(sweep, 0.024)).toBe(true));
  it('tells directions apart: 0.252 against 0.192 A is 27 % of their mean', () => {
    const [, apart] = found(run({ ...healthy, upA: 0.24, downA: 0.18 })) as Measured[];
    expect(covers(apart, (100 * 0.06) / 0.222)).toBe(true);
    expect(apart.interval[0]).toBeGreaterThan(20);
  });
  it('finds a tight spot, and where', () => {
    const at1600 = (us: number) => 0.012 + 0.1 * Math.exp(-(((us - 1600) / 40) ** 2));
    const [, , , spot] = found(run({ ...healthy, sweepA: at1600 })) as Measured[];
    expect(spot.value).toBeGreaterThan(5);
    expect(spot.interval[0]).toBeGreaterThan(2.5);
    expect(spot.notes[0]).toMatch(/1600 µs, 10 degrees towards longer pulses/);
  });
});
describe('servo-no-load analysis refuses', () => {
  it('a gap in a sweep, and keeps what the moves tell', () => {
    const [moving, , , tight] = found(run(healthy, { lost: (t) => t > 5 && t < 5.05 }));
    expect(moving.measured).toBe(true);
    expect(reason(tight)).toMatch(/lost in a sweep/);
  });
  it('a servo that does not move', () =>
    expect(reason(found(run({ ...healthy, upA: -2, downA: -2 }))[0])).toMatch(
      /drew no current|end of its range/,
    ));
  it('a run that broke off in the sweeps', () =>
    expect(reason(found(run(), { ...evidence, sweeps: sweeps.slice(0, 1) })[3])).toMatch(
      /before both sweeps/,
    ));
  it('moves of one way only', () =>
    expect(reason(found(run(), { ...evidence, moves: moves.filter(({ longer }) => longer) })[0])).toMatch(
      /one way/,
    ));
});
