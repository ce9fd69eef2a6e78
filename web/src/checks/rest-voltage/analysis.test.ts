// SPDX-License-Identifier: MIT
// A pack of known volts in a made-up run; the analysis must give polarity, cells and their difference back, and must
// say of a reversed, a missing and a half-plugged pack what is wrong. Cell volts of the limits: common practice.
import { describe, expect, it } from 'vitest';
import type { Finding, Measured } from '#core/measurements/measurement';
import { testRig } from '#core/samples/scan-block-fixture';
import { judgeAll } from '#core/verdicts/judge';
import type { Car } from '#core/parts/part';
import { marmot, syntheticRun } from '../synthetic-run-fixture.ts';
import { analyse, results } from './analysis.ts';
import { limits } from './limits.ts';

interface Volts {
  readonly pack: number;
  readonly mid: number;
  readonly polarity?: number;
}
function analysed({ pack, mid, polarity = pack }: Volts, car: Car = marmot): readonly Finding[] {
  const volts: Readonly<Record<string, number>> = { packVoltage: pack, midCell: mid, polarity };
  const samples = syntheticRun({
    tap: (id) => volts[id] ?? (id.startsWith('thermistor') ? 25 : 0),
    feedOnS: 9,
    endS: 3,
    fast: ['packVoltage', 'controllerVoltage', 'railVoltage', 'packCurrentWide'],
  });
  return analyse({ evidence: { rest: { fromS: 0.5, toS: 2.5 } }, samples, rig: testRig(), car });
}
const find = (findings: readonly Finding[], id: string) => findings.find((one) => one.id === id)!;
const verdicts = (findings: readonly Finding[], car: Car = marmot) =>
  Object.fromEntries(judgeAll(findings, limits(car)).map(({ id, verdict }) => [id, verdict]));
const words = (findings: readonly Finding[], id: string): string => {
  const finding = find(findings, id);
  return finding.measured ? 'measured' : finding.reason;
};

describe('rest-voltage analysis refuses', () => {
  const reversed = analysed({ pack: 0, mid: 0, polarity: -8 });
  it('a reversed pack by its polarity, and says so at every other result', () => {
    expect(verdicts(reversed)['pack-polarity']).toBe('fail');
    for (const { id } of results.slice(1)) expect(words(reversed, id)).toMatch(/reversed.*Unplug it now/);
  });
  it('to measure where no pack is', () => {
    for (const { id } of results) expect(words(analysed({ pack: 0, mid: 0 }), id)).toMatch(/No pack/);
  });
  it('cells without the balance lead, and still tells the pack', () => {
    const unplugged = analysed({ pack: 8, mid: 0 });
    expect(words(unplugged, 'lower-cell')).toMatch(/balance lead/);
    expect(words(unplugged, 'cell-imbalance')).toMatch(/balance lead/);
    expect(verdicts(unplugged)['pack-voltage']).toBe('pass');
  });
  it('to hold a single cell against another', () => {
    const single = { ...marmot, pack: { ...marmot.pack, cells: 1 } };
    expect(words(analysed({ pack: 4, mid: 0 }, single), 'cell-imbalance')).toMatch(/one cell/);
  });
});
describe('rest-voltage analysis', () => {
  const findings = analysed({ pack: 8.1, mid: 4.0 });
  it('gives pack, cells and their difference back', () => {
    const value = (id: string) => (find(findings, id) as Measured).value;
    expect(value('pack-voltage')).toBeCloseTo(8.1, 1);
    expect(value('lower-cell')).toBeCloseTo(4, 2);
    expect(value('upper-cell')).toBeCloseTo(4.1, 2);
    expect(value('cell-imbalance')).toBeCloseTo(0.1, 2);
  });
  it('counts no reference error in the difference of two cells: both taps share it', () => {
    const budget = (find(findings, 'cell-imbalance') as Measured).budget;
    const reference = budget.find(({ source }) => source === 'reference voltage')?.u ?? 0;
    expect(reference).toBeLessThan(0.001);
    expect((find(findings, 'cell-imbalance') as Measured).u).toBeLessThan(0.04);
  });
  it('tells a difference without its sign, whichever cell is lower', () =>
    expect((find(analysed({ pack: 8.1, mid: 4.1 }), 'cell-imbalance') as Measured).value).toBeCloseTo(
      0.1,
      2,
    ));
  it('passes a charged pack', () =>
    expect(new Set(Object.values(verdicts(analysed({ pack: 8.2, mid: 4.1 }))))).toEqual(new Set(['pass'])));
  it('judges by the chemistry entered: 8.2 V is too much for two iron phosphate cells, 6.6 V is fine', () => {
    const iron = { ...marmot, pack: { ...marmot.pack, chemistry: 'lifepo4' as const } };
    expect(verdicts(analysed({ pack: 8.2, mid: 4.1 }, iron), iron)['pack-voltage']).toBe('fail');
    expect(verdicts(analysed({ pack: 6.6, mid: 3.3 }, iron), iron)['pack-voltage']).toBe('pass');
  });
  it('judges by the cells entered: 8.2 V is flat for three', () => {
    const three = { ...marmot, pack: { ...marmot.pack, cells: 3 } };
    expect(verdicts(analysed({ pack: 8.2, mid: 2.73 }, three), three)['pack-voltage']).toBe('fail');
  });
  it('fails a cell that rests 0.4 V lower', () =>
    expect(verdicts(analysed({ pack: 7.9, mid: 3.75 }))['cell-imbalance']).toBe('fail'));
});
