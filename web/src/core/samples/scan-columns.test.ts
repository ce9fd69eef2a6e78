// SPDX-License-Identifier: MIT
import { describe, expect, it } from 'vitest';
import { ScanColumns } from './scan-columns.ts';
import { scanBlock, testRig } from './scan-block-fixture.ts';

const blockTicks = 8 * 9 * 208;

function filled(
  blocks: number,
  change: (index: number) => Parameters<typeof scanBlock>[0] = () => ({}),
): ScanColumns {
  const columns = new ScanColumns(testRig());
  for (let i = 0; i < blocks; i++)
    columns.push(scanBlock({ scan: i * 8, tick: i * blockTicks, ...change(i) }));
  return columns;
}
describe('ScanColumns', () => {
  it('scales a divider by the supply that the reference input tells', () => {
    // 2.5 V reads 500 of 1024 codes, so the supply is 5.12 V; code 512 at a 2:1 divider is 5.12 V.
    const columns = filled(20, () => ({ codes: { a: 512 }, reference: 500 }));
    expect(columns.supply(0, 1).volts).toBeCloseTo(5.12, 9);
    expect(columns.series('packVoltage', 0, 1).value[3]).toBeCloseTo(5.12, 9);
  });
  it('takes the supply as nominal when the reference was never scanned, and says so', () => {
    const columns = filled(3, () => ({ slow: 6, codes: { a: 512 } }));
    expect(columns.supply(0, 1)).toMatchObject({ readings: 0, volts: 5 });
  });
  it('places the mean of a pair at the mean of its conversion times', () => {
    const { timeS } = filled(2).series('packVoltage', 0, 1);
    expect(timeS[0]).toBeCloseTo((1.5 + 1.5 / 13) * 104e-6, 9);
    expect(timeS[1] - timeS[0]).toBeCloseTo(936e-6, 12);
    expect(timeS.length).toBe(16);
  });
  it('tells a tap that is scanned in two slots twice a scan, in the order of time', () => {
    const columns = filled(1, () => ({ fast: [4, 0, 4, 5], codes: { a: 300, c: 500 } }));
    const { timeS, value } = columns.series('controllerVoltage', 0, 1);
    expect(timeS).toHaveLength(16);
    expect(timeS[1] - timeS[0]).toBeCloseTo(4 * 104e-6, 12);
    expect(timeS[2] - timeS[1]).toBeCloseTo(5 * 104e-6, 12);
    expect(value[1] / value[0]).toBeCloseTo(5 / 3, 9);
  });
  it('goes on in time when the 32-bit tick wraps', () => {
    const start = 2 ** 32 - blockTicks;
    const columns = filled(3, (i) => ({ tick: (start + i * blockTicks) >>> 0 }));
    expect(columns.latestS).toBeCloseTo(2 * blockTicks * 0.5e-6 + 7 * 936e-6, 9);
  });
  it('knows a lost block as a gap and counts its scans', () => {
    const columns = filled(4, (i) => (i < 2 ? {} : { scan: (i + 1) * 8, tick: (i + 1) * blockTicks }));
    expect(columns.gaps).toHaveLength(1);
    expect(columns.gaps[0].fromS).toBeCloseTo(2 * blockTicks * 0.5e-6, 9);
    expect(columns.series('packVoltage', 0, 1).lost).toBe(8);
    expect(columns.series('packVoltage', 0, 0.01).lost).toBe(0);
  });
  it('places a slow value at the end of its scan, in the scan whose turn its input had', () => {
    const at = (slowFirst: number) =>
      filled(1, () => ({ slowFirst })).series('thermistorMotor', 0, 1).timeS[0];
    expect(at(0)).toBeCloseTo((8 + 1.5 / 13) * 104e-6, 9);
    expect(at(6) - at(0)).toBeCloseTo(2 * 936e-6, 9);
  });
  it('does not call a pause of the scan a loss', () => {
    expect(filled(4, (i) => (i < 2 ? {} : { tick: i * blockTicks + 1e6 })).gaps).toHaveLength(0);
  });
  it('does not call a block a loss that a scan list, new or sent again, cut short, but a lost block all the same', () => {
    const list = (scan: number, fast: number[]) => ({ scan, fast, tick: scan * 1872 });
    expect(filled(2, (i) => (i === 0 ? list(0, [0, 1, 2, 3]) : list(12, [0, 4, 2, 5]))).gaps).toHaveLength(0);
    expect(filled(2, (i) => (i === 0 ? list(0, [0, 1, 2, 3]) : list(12, [0, 1, 2, 3]))).gaps).toHaveLength(0);
    expect(filled(2, (i) => (i === 0 ? list(0, [0, 1, 2, 3]) : list(20, [0, 4, 2, 5]))).gaps).toHaveLength(1);
  });
  it('rejects clipped values and counts them', () => {
    const columns = filled(2, (i) => ({ codes: { b: i === 0 ? 1023 : 300 } }));
    const series = columns.series('packCurrentNarrow', 0, 1);
    expect(series.clipped).toBe(8);
    expect(series.value.length).toBe(8);
  });
  it('keeps a true zero of a tap that starts at zero', () => {
    const series = filled(1, () => ({ codes: { c: 0 } })).series('railVoltage', 0, 1);
    expect(series.clipped).toBe(0);
    expect(series.value[0]).toBe(0);
  });
  it('reads a thermistor once a block, at 25 C for a divided half, wherever the turn began', () => {
    const columns = filled(4, (i) => ({ slowFirst: i % 8, mux: { 0: 512 } }));
    const series = columns.series('thermistorMotor', 0, 1);
    expect(series.value.length).toBe(4);
    expect(series.value[2]).toBeCloseTo(25, 6);
  });
  it('rebuilds edges backwards from the last one of each block', () => {
    const columns = filled(3, (i) => ({
      lastEdge: 10000 + i * 14000,
      edges: i === 0 ? [4000, 4000] : [6000, 8000],
      edgesA: 2 * (i + 1),
    }));
    const edges = Array.from(columns.edges(0, 1), (s) => Math.round(s * 2e6));
    expect(edges).toEqual([6000, 10000, 16000, 24000, 30000, 38000]);
    expect(columns.status(0, 1).edgesA[2]).toBe(4);
  });
  it('does not invent edges before a distance that says "that or more"', () => {
    const columns = filled(1, () => ({ lastEdge: 200000, edges: [5000, 65535, 1000] }));
    expect(Array.from(columns.edges(0, 1), (s) => Math.round(s * 2e6))).toEqual([199000, 200000]);
  });
  it('applies the calibration kept on the rig', () => {
    const rig = testRig({
      calibration: [
        {
          tap: 'packVoltage',
          gain: 1.01,
          offset: 0.02,
          gainU: 0,
          offsetU: 0,
          correlation: 0,
          date: '2026-01-01',
          origin: 'meter',
        },
      ],
    });
    const columns = new ScanColumns(rig);
    columns.push(scanBlock({ codes: { a: 512 }, reference: 512 }));
    expect(columns.latest('packVoltage')?.value).toBeCloseTo(5 * 1.01 + 0.02, 9);
  });
  it('gives back every block as it was pushed', () => {
    const columns = new ScanColumns(testRig());
    const sent = [
      scanBlock({ edges: [1, 2, 3], lastEdge: 77 }),
      scanBlock({ scan: 8, tick: blockTicks, edges: [9] }),
    ];
    sent.forEach((block) => columns.push(block));
    expect(columns.raw.block(0, 0)).toEqual(sent[0]);
    expect(columns.raw.block(1, 3)).toEqual(sent[1]);
  });
});
