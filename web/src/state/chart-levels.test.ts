// SPDX-License-Identifier: MIT
// Which results stand on which trace, in the axis's unit, and what their lines say; figures worked out by hand. That a
// limit of 80 C is drawn at 176 F follows from 9/5 x 80 + 32 (NIST SP 811, appendix B.8).
import { describe, expect, it } from 'vitest';
import { usualWish } from '#core/units/shown-unit';
import { checks } from '#checks/index';
import { measuredAs } from '#core/history/history-fixture';
import type { Finding, Measured } from '#core/measurements/measurement';
import type { Judged } from '#core/verdicts/limit';
import { levelLines, levelsOf, levelWords, shownLevels } from './chart-levels.ts';
import { chartUnit } from './chart-units.ts';

const inFahrenheit = { ...usualWish, temperature: 'fahrenheit' } as const;
const evidence = [{ fromS: 2, toS: 3, taps: ['railVoltage'] }];
function found(change: Partial<Measured>): Measured {
  return { ...measuredAs(6.98, []), id: 'dip', title: 'Lowest rail voltage', unit: 'V', evidence, ...change };
}
const dip = found({ level: 'railVoltage', value: 6.98, interval: [6.96, 7] });
const limit = { min: 4.5, unit: 'V', kind: 'published', source: 'example' } as const;
const passed: Judged = { id: 'dip', verdict: 'pass', limit };
const volts = chartUnit('V', usualWish);
const linesOf = (findings: readonly Finding[], judged: readonly Judged[], unit = volts) =>
  levelLines(levelsOf(findings, judged), findings[0].level ?? 'railVoltage', unit);
const plain = (text: string) => text.replaceAll(/\s/g, ' ');

describe('a result that is a level of a tap', () => {
  it('stands on that trace with value, interval, limit and stretch', () => {
    const [line] = linesOf([dip], [passed]);
    expect(line).toMatchObject({ colour: '--pass', stretches: [{ fromS: 2, toS: 3 }] });
    expect(line.value).toMatchObject({ at: 6.98, interval: [6.96, 7] });
    expect(line.limits).toMatchObject([{ at: 4.5, bad: 'below' }]);
    expect(plain(levelWords(line))).toBe('Lowest rail voltage: 6.980 ± 0.020 V, pass, limit at least 4.5 V');
  });
  it('stands on no other trace', () =>
    expect(levelLines(levelsOf([dip], [passed]), 'packVoltage', volts)).toEqual([]));
  it('has a line each for both of its limits', () =>
    expect(
      linesOf([dip], [{ ...passed, limit: { ...limit, max: 7.6 } }])[0].limits.map(({ bad }) => bad),
    ).toEqual(['below', 'above']));
  it('one exact limit is one line, bad on both sides', () =>
    expect(linesOf([dip], [{ ...passed, limit: { ...limit, max: 4.5 } }])[0].limits).toMatchObject([
      { at: 4.5, bad: 'both' },
    ]));
  it('that only informs takes no verdict for itself', () => {
    const [line] = linesOf([dip], [{ id: 'dip', verdict: 'pass' }]);
    expect(line).toMatchObject({ colour: '--soft', limits: [] });
    expect(line.value?.words).not.toContain('pass');
  });
  it('that was not measured keeps its limit and has no value', () => {
    const { id, title, unit, level } = dip;
    const [line] = linesOf(
      [{ measured: false, id, title, unit, level, reason: 'A gap.' }],
      [{ ...passed, verdict: 'not measured' }],
    );
    expect(line.value).toBeNull();
    expect(plain(levelWords(line))).toBe('Lowest rail voltage: not measured, limit at least 4.5 V');
  });
  it('says a lopsided interval by its ends', () =>
    expect(plain(linesOf([{ ...dip, interval: [6.7, 7] }], [passed])[0].value!.words)).toBe(
      '6.98 V, between 6.70 and 7.00, pass',
    ));
  it('moves with the unit of the axis', () => {
    const hot = found({ level: 'thermistorServo', unit: 'C', value: 70, interval: [68, 72] });
    const judged = {
      ...passed,
      limit: { max: 80, unit: 'C', kind: 'published', source: 'example' },
    } as const;
    const [line] = linesOf([hot], [judged], chartUnit('C', inFahrenheit));
    expect(line.limits[0].at).toBeCloseTo(176, 9);
    expect(line.value?.interval[1]).toBeCloseTo(161.6, 9);
    expect(plain(line.value!.words)).toBe('158 ± 4 °F, pass');
  });
});
it('a result of another quantity in the same unit stands on no trace: a drop, a ripple, a current carried to another voltage', () => {
  const { level: _, ...drop } = dip;
  expect(levelsOf([drop], [passed])).toEqual([]);
});
it('the key under the charts tells those of the traces that are drawn, each in its own unit', () => {
  const levels = levelsOf([dip], [passed]);
  expect(shownLevels(levels, ['packVoltage'], usualWish)).toEqual([]);
  const [row] = shownLevels(levels, ['railVoltage'], usualWish);
  expect(row.trace).toBe('rail voltage');
  expect(plain(row.value!.words)).toBe('6.980 ± 0.020 V, pass');
});
it('the result that is looked at comes first', () => {
  const levels = levelsOf([dip, { ...dip, id: 'rest' }], []);
  expect(levelLines(levels, 'railVoltage', volts, 'rest').map(({ id }) => id)).toEqual(['rest', 'dip']);
});
/** Units by the rig description: volts, amperes, degrees Celsius. */
it('every check names a tap of the same unit where it says that a result is a level', () => {
  const unitOf = (tap: string) => (/Voltage|Cell|polarity/.test(tap) ? 'V' : /Current/.test(tap) ? 'A' : 'C');
  const levels = checks.flatMap(({ results, id }) =>
    results.flatMap((result: { level?: string; unit: string }) =>
      result.level ? [[id, result.unit, unitOf(result.level)]] : [],
    ),
  );
  expect(levels.length).toBeGreaterThan(10);
  for (const [id, unit, tapUnit] of levels) expect(unit, id).toBe(tapUnit);
});
