// SPDX-License-Identifier: MIT
// Budgets of tap readings against figures computed by hand from the declared half-widths.
import { describe, expect, it } from 'vitest';
import { scanBlock, testRig } from '../samples/scan-block-fixture.ts';
import { ScanColumns } from '../samples/scan-columns.ts';
import { halfWidth } from './coverage-interval.ts';
import { linearityLines } from './tap-errors.ts';
import { budgetOf, combined, difference, standardU, uncertain } from './quantity.ts';
import { NotMeasurable, reading, tapOf, trimmedReading, zeroOf } from './tap-reading.ts';

const blockTicks = 8 * 9 * 208;
const blockS = blockTicks * 0.5e-6;
const feedFull = 1 << 4;

/** 100 blocks with the feed off at zero code, then 100 with the feed on; codes dither by one between blocks. */
function filled(
  rig = testRig(),
  change: (k: number) => Partial<Parameters<typeof scanBlock>[0]> = () => ({}),
): ScanColumns {
  const columns = new ScanColumns(rig);
  for (let k = 0; k < 200; k++) {
    const on = k >= 100;
    const b = (on ? 328 : 164) + (k % 2) * 0.5;
    columns.push(
      scanBlock({
        scan: k * 8,
        tick: k * blockTicks,
        outputs: on ? feedFull : 0,
        codes: { a: 756 + (k % 2), b },
        ...change(k),
      }),
    );
  }
  return columns;
}
const loaded = { fromS: 120 * blockS, toS: 190 * blockS };

describe('converter non-linearity', () => {
  const rig = testRig();
  const tap = tapOf(rig, 'railVoltage');
  const lines = (code: number, share: number) => linearityLines(rig, tap, { code, share, supplyV: 5 });
  const step = 10 / 1024;
  it('bows most in the middle: 0.7 of a step there, none at the ends', () => {
    const bow = (code: number) => lines(code, 0)[0][1] * Math.sqrt(3);
    expect(bow(512) / step).toBeCloseTo(0.7, 6);
    expect(bow(0)).toBe(0);
    expect(bow(256) / step).toBeCloseTo(0.7 * 0.75, 6);
  });
  it('falls out of a voltage that stands where the reference does', () =>
    expect(lines(512, 5)[0][1] / step).toBeCloseTo(0, 6));
  it('falls out of a small difference but for the codes of their own', () => {
    const [near, other] = [600, 620].map((code) => uncertain(code * step, lines(code, code * step)));
    const u = standardU(difference(other, near));
    expect((u * Math.sqrt(3)) / step).toBeGreaterThan(0.5 * Math.SQRT2);
    expect((u * Math.sqrt(3)) / step).toBeLessThan(0.8);
  });
});
describe('trimmedReading', () => {
  const rig = testRig();
  const bench = { samples: filled(rig), rig };
  it('takes the zero of the same tap away: 164 codes of 12.2 mA are 2.002 A', () => {
    const zero = zeroOf(bench, 'packCurrentNarrow');
    const amps = trimmedReading(bench, 'packCurrentNarrow', loaded, zero);
    expect(amps.value).toBeCloseTo((164 * 5 * 2.5) / 1024, 3);
  });
  it('has an uncertainty at 2 A of about 2 %: gain 1.5 %, reference, drift, non-linearity at two codes', () => {
    const amps = trimmedReading(bench, 'packCurrentNarrow', loaded, zeroOf(bench, 'packCurrentNarrow'));
    const u = (relative: number) => (relative * amps.value) / Math.sqrt(3);
    const byHand = Math.hypot(
      u(0.015),
      u(0.002),
      u(0.5 / 512),
      0.005 / Math.sqrt(3),
      0.5 * Math.SQRT2 * (0.0122 / Math.sqrt(3)),
    );
    expect(standardU(amps) / byHand).toBeCloseTo(1, 2);
    expect(halfWidth(budgetOf(amps)) / amps.value).toBeLessThan(0.022);
  });
});
describe('reading', () => {
  const rig = testRig();
  const bench = { samples: filled(rig), rig };
  it('shares the reference between volts and amperes: it falls out of a resistance', () => {
    const volts = reading(bench, 'packVoltage', loaded);
    const amps = trimmedReading(bench, 'packCurrentNarrow', loaded, zeroOf(bench, 'packCurrentNarrow'));
    const power = combined([volts, amps], (v, i) => v * i);
    const ohm = combined([volts, amps], (v, i) => v / i);
    const line = (quantity: typeof ohm) =>
      budgetOf(quantity).find(({ source }) => source === 'reference voltage')?.u ?? 0;
    expect(line(power) / power.value).toBeCloseTo((2 * 0.002) / Math.sqrt(3), 5);
    expect(line(ohm)).toBe(0);
  });
  it('uses the calibration where the rig keeps one, and names it', () => {
    const kept = {
      tap: 'packVoltage',
      gain: 1,
      offset: 0,
      gainU: 0.002,
      offsetU: 0.004,
      correlation: 0,
      date: '2026-05-01',
      origin: 'meter',
    };
    const calibrated = testRig({ calibration: [kept] });
    const volts = reading({ samples: filled(calibrated), rig: calibrated }, 'packVoltage', loaded);
    const gain = budgetOf(volts).find(({ source }) => source === 'gain of packVoltage')!;
    expect(gain.u).toBeCloseTo(volts.value * 0.001, 9);
    expect(gain.origin).toContain('2026-05-01');
  });
  it('refuses a tap that the rig has not', () =>
    expect(() => reading(bench, 'railTemperature', loaded)).toThrow(/no tap "railTemperature"/));
  it('refuses a stretch with a gap', () => {
    const gapped = filled(rig, (k) => (k < 150 ? {} : { scan: (k + 1) * 8, tick: (k + 1) * blockTicks }));
    expect(() => reading({ samples: gapped, rig }, 'packVoltage', loaded)).toThrow(/8 scans were lost/);
  });
  it('refuses a clipped stretch', () => {
    const clipped = filled(rig, (k) => (k < 150 ? {} : { codes: { a: 1023 } }));
    expect(() => reading({ samples: clipped, rig }, 'packVoltage', loaded)).toThrow(/end of its range/);
  });
  it('refuses too few values', () =>
    expect(() => reading(bench, 'packVoltage', { fromS: 1, toS: 1.01 })).toThrow(/at least 32 are needed/));
  it('refuses volts when the reference was never read', () => {
    const dark = filled(rig, () => ({ slow: 6 }));
    expect(() => reading({ samples: dark, rig }, 'packVoltage', loaded)).toThrow(/reference was never read/);
  });
});
describe('zeroOf', () => {
  it('refuses a run that never had the feed off', () => {
    const rig = testRig();
    const samples = filled(rig, () => ({ outputs: feedFull }));
    expect(() => zeroOf({ samples, rig }, 'packCurrentNarrow')).toThrow(NotMeasurable);
  });
});
