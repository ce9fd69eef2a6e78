// SPDX-License-Identifier: MIT
// Every bad input to limits, baselines and part files: what was tried and what the person is told. The table in the
// README beside must hold the same rows, word for word.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { z } from 'zod';
import { baselinesSchema } from '../history/baseline.ts';
import { carSchema, type Car } from '../parts/part.ts';
import { classRowSchema, classRows } from './class-data.ts';
import { labelDoubts } from './label-doubts.ts';
import { overridesSchema, overrideTrouble, type Overridable } from './override.ts';
import { scaledNoLoad, scaledRating } from './rating-scaling.ts';

const car: Car = JSON.parse(
  readFileSync(new URL('../../../../demo-data/marmot.json', import.meta.url), 'utf8'),
);
const readme = readFileSync(new URL('./README.md', import.meta.url), 'utf8')
  .split('## What bad input is told')[1]
  .replaceAll(/ +\|/g, ' |');

function told(schema: z.ZodType, value: unknown): string {
  const parsed = schema.safeParse(value);
  return parsed.success
    ? 'taken'
    : parsed.error.issues
        .map(({ path, message }) => [path.join('.'), message].filter(Boolean).join(': '))
        .join('; ');
}
const key = 'motor-no-load/no-load-current';
const good = { checkResultId: key, max: 3.3, reason: 'runs hot above this', date: '2026-11-20' };
const override = (change: object): string => told(overridesSchema, [{ ...good, ...change }]);
const known: Overridable[] = [{ key, unit: 'A', max: 3.75 }];
const trouble = (change: object): string => overrideTrouble({ ...good, ...change }, known) ?? 'taken';
const baseline = {
  checkResultId: key,
  partName: 'Gravel Wren 13.5',
  unit: 'A',
  centre: 3,
  sigma: 0.02,
  runIds: ['a', 'b', 'c', 'd', 'e'],
  fromDate: '2026-11-01',
  toDate: '2026-11-05',
  rigSerial: '17',
};
const baselines = (...changes: object[]): string =>
  told(
    baselinesSchema,
    changes.map((change) => ({ ...baseline, ...change })),
  );
const withMotor = (change: object) => told(carSchema, { ...car, motor: { ...car.motor, ...change } });
const withServo = (change: object) => told(carSchema, { ...car, servo: { ...car.servo, ...change } });
const row = (change: object) => told(classRowSchema, { ...classRows[0], ...change });
const refused = (answer: object) => ('unusable' in answer ? String(answer.unusable) : 'taken');
const doubt = (change: (car: Car) => object): string =>
  labelDoubts({ ...car, ...change(car) }).join(' ') || 'none';

const cases: readonly (readonly [tried: string, answer: string])[] = [
  ['override without a bound', override({ max: undefined })],
  ['override with its bounds swapped', override({ min: 4 })],
  ['override with equal bounds', override({ min: 3.3 })],
  ['override with a bound below 0', override({ max: -1 })],
  ['override with an upper bound of 0', override({ max: 0 })],
  ['override with a bound as text', override({ max: '3.3 A' })],
  ['override with a bound that is not finite', override({ max: Number.POSITIVE_INFINITY })],
  ['override without a reason', override({ reason: undefined })],
  ['override with a reason of blanks', override({ reason: '            ' })],
  ['override with a date of another form', override({ date: '20.11.2026' })],
  ['override with a day that is not', override({ date: '2026-02-30' })],
  ['override with a misspelt field', override({ maks: 3 })],
  ['override of a result named otherwise', override({ checkResultId: 'no-load current' })],
  ['two overrides of one result', told(overridesSchema, [good, good])],
  ['override of a result no check has', trouble({ checkResultId: 'motor-no-load/torque' })],
  ['override in mA', trouble({ max: 3300 })],
  ['override in kA', trouble({ max: 0.0033 })],
  ['baseline of one run', baselines({ runIds: ['a'] })],
  ['baseline that counts a run twice', baselines({ runIds: ['a', 'a', 'b'] })],
  ['baseline with its dates swapped', baselines({ fromDate: '2026-11-09' })],
  ['baseline with a spread below 0', baselines({ sigma: -1 })],
  ['baseline with a mean as text', baselines({ centre: '3 A' })],
  ['baseline without its part', baselines({ partName: '' })],
  [
    'baseline with an error of its rig below 0',
    baselines({ rigErrors: [{ source: 'gain of packCurrentNarrow', origin: 'rig description', u: -0.01 }] }),
  ],
  ['two baselines of one result', baselines({}, {})],
  ['part without a name', withMotor({ name: ' ' })],
  ['turns as text', withMotor({ turns: '13.5T' })],
  ['half a pole pair', withMotor({ polePairs: 1.5 })],
  ['tolerance of kV in per cent', withMotor({ ratedKvTolerance: 7 })],
  ['no-load current at 0 V', withMotor({ ratedNoLoadAtV: 0 })],
  ['winding resistance in mohm', withMotor({ windingOhm: { ohm: 14, u: 0.2 } })],
  ['winding resistance without its uncertainty', withMotor({ windingOhm: { ohm: 0.014 } })],
  ['winding resistance known too badly', withMotor({ windingOhm: { ohm: 0.014, u: 0.006 } })],
  ['winding resistance of another form', withMotor({ windingOhm: { ohm: 0.014, u: 0.001, at: 25 } })],
  ['tolerance of the stall current in per cent', withServo({ ratedStallTolerance: 15 })],
  ['torque in oz.in', withServo({ ratedTorqueNm: 240 })],
  ['time of 0 s', withServo({ ratedSecondsPer60: 0 })],
  ['servo of another size', withServo({ size: 'micro' })],
  ['second rating at the voltage of the first', withServo({ secondRating: { voltageV: 6, stallA: 3 } })],
  ['second rating without a figure', withServo({ secondRating: { voltageV: 7.4 } })],
  ['pack of five cells', told(carSchema, { ...car, pack: { ...car.pack, cells: 5 } })],
  ['chemistry that is not known', told(carSchema, { ...car, pack: { ...car.pack, chemistry: 'lead' } })],
  ['car with a bad override in it', told(carSchema, { ...car, overrides: [{ ...good, max: -1 }] })],
  ['class row with its range upside down', row({ typical: [12, 7] })],
  ['class row without a bound', row({ min: undefined, max: undefined })],
  ['stall current of 4.8 V at 7.4 V', refused(scaledRating('current', [{ value: 3, atV: 4.8 }], 7.4))],
  [
    'torque that falls with voltage',
    refused(
      scaledRating(
        'torque',
        [
          { value: 2, atV: 6 },
          { value: 1, atV: 7.4 },
        ],
        6.7,
      ),
    ),
  ],
  ['no-load current of 11.1 V at 7.4 V', refused(scaledNoLoad({ value: 3, atV: 11.1 }, 7.4))],
  ['kV with a digit missing', doubt(({ motor }) => ({ motor: { ...motor, ratedKvRpmPerV: 290 } }))],
  ['no-load current with its point lost', doubt(({ motor }) => ({ motor: { ...motor, ratedNoLoadA: 36 } }))],
  [
    'greatest speed with a digit missing',
    doubt(({ motor }) => ({ motor: { ...motor, ratedSpeedRpm: 4500 } })),
  ],
  [
    'torque, time and stall current that do not fit',
    doubt(({ servo }) => ({ servo: { ...servo, ratedTorqueNm: 2.5, ratedSecondsPer60: 0.08 } })),
  ],
  [
    'torque of a low-profile servo in kg.cm',
    doubt(({ servo }) => ({ servo: { ...servo, size: 'low-profile', ratedTorqueNm: 9 } })),
  ],
];
describe('bad input', () => {
  it.each(cases)('%s is told in words that the README holds', (tried, answer) => {
    expect(answer).not.toMatch(/^(taken|none)$|Invalid|undefined|NaN|expected/);
    expect(readme).toContain(`| ${tried} | ${answer} |`);
  });
  it('the README holds no other rows', () =>
    expect(readme.split('\n').filter((line) => /^\| (?!tried|---)/.test(line))).toHaveLength(cases.length));
});
it('the good ones these were made from are taken', () => {
  expect(override({})).toBe('taken');
  expect(trouble({})).toBe('taken');
  expect(baselines({})).toBe('taken');
  expect(withMotor({ ratedNoLoadAtV: 7.2 })).toBe('taken');
  expect(withServo({ size: 'standard', secondRating: { voltageV: 7.4, torqueNm: 1.7 } })).toBe('taken');
  expect(row({})).toBe('taken');
  expect(labelDoubts(car)).toEqual([]);
});
