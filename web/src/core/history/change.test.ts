// SPDX-License-Identifier: MIT
// Change since the baseline, by hand: scatter s, n first runs, shared gain g on both sides. u of the difference is
// root of s^2/n + s^2 + (what is left of the gain)^2; JCGM 100:2008, 5.2.2 with one fully correlated pair.
import { describe, expect, it } from 'vitest';
import { seededRandom } from '#sim/seeded-random';
import { testRig } from '../samples/scan-block-fixture.ts';
import {
  clockLine,
  gainLines,
  linearityLines,
  quantisationLine,
  zeroLine,
} from '../measurements/tap-errors.ts';
import { thermistorLines } from '../measurements/thermistor-errors.ts';
import { changeSince, changeWords } from './change.ts';
import { budgetLine, measuredAs, pointOf, pointsOf } from './history-fixture.ts';

const first = [3.0, 3.04, 2.98, 3.02, 2.99];
/** Mean 3.006, squares 0.00232: s = root of 0.00232/4 = 0.024083. */
const sigma = 0.0240832;
const bare = first.map((value, i) => ({ ...pointOf(value, i), finding: measuredAs(value, []) }));

describe('on the same rig', () => {
  it('the gain cancels but for the difference: 1 % of 3.5 less 1 % of 3.0 leaves 0.005', () => {
    const change = changeSince(pointsOf(...first), pointOf(3.5, 9))!;
    expect(change.by).toBeCloseTo(3.5 - 3.006, 10);
    expect(change.u).toBeCloseTo(Math.hypot(sigma / Math.sqrt(5), sigma, 0.005), 6);
    expect(change.shared).toEqual(['gain of packCurrentNarrow']);
    expect(change.clear).toBe(true);
  });
  it('scatter alone gives t(4) = 2.776 times s sqrt(1 + 1/5) (GUM table G.2)', () => {
    const { half, dof } = changeSince(bare, { ...pointOf(3, 9), finding: measuredAs(3, []) })!;
    expect(dof).toBeCloseTo(4, 9);
    expect(half).toBeCloseTo(2.7764 * 0.0240832 * Math.sqrt(1.2), 4);
  });
  it('a run with more doubt of its own than the scatter brings its own', () => {
    const scatter = budgetLine('scatter', 0.3, { shape: 'student', dof: 15 });
    const later = { ...pointOf(3, 9), finding: measuredAs(3, [scatter]) };
    expect(changeSince(bare, later)!.u).toBeCloseTo(Math.hypot(0.3, sigma / Math.sqrt(5)), 6);
  });
});
describe('on another rig', () => {
  it('both gains count: 1 % of 3.5 and 1 % of 3.0', () => {
    const change = changeSince(pointsOf(...first), pointOf(3.5, 9, { rigSerial: '18' }))!;
    expect(change.u).toBeCloseTo(Math.hypot(sigma / Math.sqrt(5), sigma, 0.035, 0.03), 6);
    expect(change.shared).toEqual([]);
    expect(changeWords(change, 'A', 5)).toContain('share no errors');
  });
  it('so do they on the same rig after a calibration between', () => {
    const later = {
      ...pointOf(3.5, 9),
      finding: measuredAs(3.5, [
        budgetLine('gain of packCurrentNarrow', 0.01, { origin: 'calibration of 2026-11-08' }),
      ]),
    };
    expect(changeSince(pointsOf(...first), later)!.u).toBeCloseTo(
      Math.hypot(sigma / Math.sqrt(5), sigma, 0.01, 0.03),
      6,
    );
  });
  it('and a rig without a number is never the same', () =>
    expect(
      changeSince(
        first.map((value, i) => pointOf(value, i, { rigSerial: '' })),
        pointOf(3.5, 9, { rigSerial: '' }),
      )!.shared,
    ).toEqual([]));
});
it('knows the lines that the taps really bring: gain, offset, reference, bow and clock stay, the rest comes anew', () => {
  const rig = testRig();
  const tap = rig.descriptor.taps.find(({ id }) => id === 'railVoltage')!;
  const [motorTap, unshunted] = ['thermistorMotor', 'railCurrent'].map((id) =>
    rig.descriptor.taps.find((one) => one.id === id)!,
  );
  const amps = { ...unshunted, error: { ...unshunted.error, shunt: { name: 'rail', tolerance: 0.01 } } };
  const at = { code: 700, share: 6, supplyV: 4.9 };
  const lines = [
    ...gainLines(rig, tap, 6, false),
    ...gainLines(rig, amps, 2, true).slice(0, 1),
    ...thermistorLines(rig, motorTap, 40),
    zeroLine(rig, tap, false),
    zeroLine(rig, tap, true),
    ...linearityLines(rig, tap, at),
    quantisationLine(tap, 'x', 0.001, 4.9),
    clockLine({ ratio: 1, halfWidth: 0.005, origin: 'descriptor' }, 6),
  ];
  const budget = lines.map(([{ words, origin }, u]) => budgetLine(words, Math.abs(u) + 0.01, { origin }));
  const point = (i: number) => ({ ...pointOf(6, i), finding: measuredAs(6, budget, 'V') });
  const { shared } = changeSince([0, 1, 2, 3, 4].map(point), point(9))!;
  expect(shared.toSorted()).toEqual(
    [
      'gain of railVoltage',
      'rail shunt',
      'resistance at 25 °C of thermistorMotor',
      'pull-up of thermistorMotor',
      'B value of thermistorMotor',
      'bend from the B equation of thermistorMotor',
      'offset of railVoltage',
      'reference voltage',
      'converter non-linearity at the reference',
      'bow of the converter over its span',
      "the rig's clock",
    ].toSorted(),
  );
});
describe('words', () => {
  const words = (value: number) => changeWords(changeSince(pointsOf(...first), pointOf(value, 9))!, 'A', 5);
  it('say by how much, within what, since when, and what fell out', () =>
    expect(words(3.5)).toMatch(
      /^Changed by \+0\.49\d? ± 0\.\d+ A since its first 5 runs\. Left out, as both sides have it: gain of packCurrentNarrow\.$/,
    ));
  it('say that no change is seen', () => expect(words(3.01)).toMatch(/^No change seen: by \+0\.00/));
});
it('covers no change in 95 % of simulated histories, whatever the rig’s gain', () => {
  const random = seededRandom(3, 'histories');
  const runs = 4000;
  let covered = 0;
  for (let k = 0; k < runs; k++) {
    const gain = 1 + 0.01 * Math.sqrt(3) * random.between(-1, 1);
    const values = Array.from({ length: 6 }, () => 3 * gain + 0.03 * random.gaussian());
    if (!changeSince(pointsOf(...values.slice(0, 5)), pointOf(values[5], 9))!.clear) covered++;
  }
  // 5 standard deviations of a share of 95 % in 4000: 1.7 %.
  expect(Math.abs(covered / runs - 0.95)).toBeLessThan(0.0172);
});
