// SPDX-License-Identifier: MIT
// A rail and a pack of known volts and ohms in a made-up run: setting, what is left at race current, head-room.
import { describe, expect, it } from 'vitest';
import type { Finding, Measured } from '#core/measurements/measurement';
import { testRig } from '#core/samples/scan-block-fixture';
import { judgeAll } from '#core/verdicts/judge';
import type { Car } from '#core/parts/part';
import { marmot, syntheticRun } from '../synthetic-run-fixture.ts';
import { analyse } from './analysis.ts';
import type { Evidence } from './evidence.ts';
import { limits } from './limits.ts';

const stepS = [5, 6, 7];
const evidence: Evidence = {
  rest: { fromS: 3, toS: 4 },
  steps: stepS.map((s) => ({
    loaded: { fromS: s + 0.06, toS: s + 0.26 },
    free: { fromS: s + 0.5, toS: s + 0.8 },
  })),
};
interface Supply {
  readonly packV: number;
  readonly railV: number;
  readonly ohm?: number;
}
function analysed({ packV, railV, ohm = 0.02 }: Supply, car: Car = marmot, steps = evidence.steps) {
  const amps = (t: number) => (t < 1 ? 0 : stepS.some((s) => t > s && t < s + 0.3) ? 4.2 : 0.2);
  const tap = (id: string, t: number) => {
    if (id === 'packCurrentNarrow') return amps(t);
    if (id === 'railVoltage') return t < 1 ? 0 : railV;
    return id.endsWith('Voltage') ? packV - ohm * amps(t) : undefined;
  };
  const samples = syntheticRun({
    tap,
    feedOnS: 1,
    endS: 8.5,
    fast: ['railVoltage', 'controllerVoltage', 'packVoltage', 'packCurrentNarrow'],
  });
  return analyse({ evidence: { ...evidence, steps }, samples, rig: testRig(), car });
}
const find = (findings: readonly Finding[], id: string) => findings.find((one) => one.id === id)!;
const verdictOf = (findings: readonly Finding[], id: string) =>
  judgeAll(findings, limits(marmot)).find((judged) => judged.id === id)?.verdict;

describe('rail-setting analysis', () => {
  it('does not judge a setting without head-room, and tells the figure that counts instead', () => {
    const findings = analysed({ packV: 6.3, railV: 6 });
    const setting = find(findings, 'rail-setting');
    expect(setting.measured ? '' : setting.reason).toMatch(/0\.\d+ V of head-room.*5\.\d V at 40 A/);
    expect((find(findings, 'rail-in-race') as Measured).value).toBeCloseTo(6.3 - 40 * 0.02 - 0.25, 1);
  });
  it('tells nothing of the race without a load step', () => {
    const left = find(analysed({ packV: 8, railV: 6 }, marmot, []), 'rail-in-race');
    expect(left.measured ? '' : left.reason).toMatch(/load bank/);
  });
  it('passes a rail at its setting and fails one set to 7.4 V', () => {
    expect(verdictOf(analysed({ packV: 8, railV: 6.03 }), 'rail-setting')).toBe('pass');
    expect(verdictOf(analysed({ packV: 8, railV: 7.4 }), 'rail-setting')).toBe('fail');
  });
  it('tells the setting itself where the pack has enough left at race current', () =>
    expect((find(analysed({ packV: 8, railV: 6 }), 'rail-in-race') as Measured).value).toBeCloseTo(6, 1));
  it('takes the race current that was entered with the pack', () => {
    const hard = { ...marmot, pack: { ...marmot.pack, raceCurrentA: 100 } };
    const left = find(analysed({ packV: 8, railV: 6 }, hard), 'rail-in-race') as Measured;
    expect(left.value).toBeCloseTo(8 - 100 * 0.02 - 0.25, 1);
    expect(left.interval[0]).toBeLessThan(8 - 100 * 0.02 - 0.25);
  });
  it('fails a rail that would fall below the floor of the receiver', () =>
    expect(verdictOf(analysed({ packV: 6.6, railV: 6, ohm: 0.08 }), 'rail-in-race')).toBe('fail'));
});
