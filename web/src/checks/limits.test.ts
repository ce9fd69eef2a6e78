// SPDX-License-Identifier: MIT
// The limits of every check, for cars at the ends of what a label may say: whole, sourced, of a result of that
// check and in its unit, never upside down.
import { describe, expect, it } from 'vitest';
import { carSchema, type Car } from '#core/parts/part';
import { limitSchema } from '#core/record/run-record';
import type { Limit } from '#core/verdicts/limit';
import { testRig } from '#core/samples/scan-block-fixture';
import { checks } from './index.ts';
import { marmot } from './synthetic-run-fixture.ts';

const rising = (...values: (number | undefined)[]): boolean => {
  const given = values.filter((value) => value !== undefined);
  return given.every((value, i) => i === 0 || given[i - 1] <= value);
};
const sound = limitSchema
  .strict()
  .refine(({ min, max }) => min !== undefined || max !== undefined, 'a limit bounds at least one side')
  .refine(({ min, max }) => rising(0, min, max), 'a limit runs upwards from 0')
  .refine(({ min, warnMin }) => rising(min, warnMin), 'a watch level lies within the limit')
  .refine(({ max, warnMax }) => rising(warnMax, max), 'a watch level lies within the limit')
  .refine(
    ({ kind, source }) => kind !== 'common practice' || /no source/.test(source),
    'says it has no source',
  );

const withMotor = (change: Partial<Car['motor']>): Car => ({
  ...marmot,
  motor: { ...marmot.motor, ...change },
});
const withServo = (change: Partial<Car['servo']>): Car => ({
  ...marmot,
  servo: { ...marmot.servo, ...change },
});
const cars: readonly (readonly [string, Car])[] = [
  ['the usual car', marmot],
  ['a motor without a rated current', withMotor({ ratedNoLoadA: undefined })],
  ['few turns', withMotor({ turns: 0.5, ratedNoLoadA: undefined })],
  ['the most turns', withMotor({ turns: 60, ratedNoLoadA: undefined })],
  ['no tolerance of kV', withMotor({ ratedKvTolerance: 0 })],
  ['the widest tolerance of kV', withMotor({ ratedKvTolerance: 0.3, ratedKvRpmPerV: 20000 })],
  ['a servo without a rated current', withServo({ ratedStallA: undefined })],
  ['the widest tolerance of a servo', withServo({ ratedStallA: 20, ratedStallTolerance: 0.5 })],
  [
    'leads with a joint of every kind',
    {
      ...marmot,
      leads: {
        kind: 'leads',
        name: 'leads',
        joints: [
          { name: 'a', kind: 'solder' },
          { name: 'b', kind: 'bullet' },
          { name: 'c', kind: 'plug' },
          { name: 'd', kind: 'lead', gaugeAwg: 14, lengthM: 0.2 },
        ],
      },
    },
  ],
  ['the highest rail', { ...marmot, controller: { ...marmot.controller, railSettingV: 9, railFloorV: 7.5 } }],
];
describe.each(checks)('limits of $id', ({ limits, results, more }) => {
  it.each(cars)('are sound for %s', (_, car) => {
    for (const [id, limit] of Object.entries(limits(carSchema.parse(car), testRig()))) {
      expect(sound.safeParse(limit).error?.issues ?? [], `${id} ${JSON.stringify(limit)}`).toEqual([]);
      expect([...results, ...(more?.(car) ?? [])].find((result) => result.id === id)?.unit, id).toBe(
        limit.unit,
      );
    }
  });
});
describe('a limit that is not sound', () => {
  const good: Limit = { min: 1, max: 2, unit: 'A', kind: 'rating', source: 'label' };
  it.each<[string, Partial<Record<keyof Limit, unknown>>]>([
    ['upside down', { min: 3 }],
    ['without a side', { min: undefined, max: undefined }],
    ['not a number', { max: Number.NaN }],
    ['without a source', { source: '' }],
    ['of an unknown kind', { kind: 'guess' }],
    ['watched beyond its end', { warnMax: 2.5 }],
    ['of common practice with a source that is not told', { kind: 'common practice' }],
  ])('is seen: %s', (_, change) => {
    expect(sound.safeParse(good).success).toBe(true);
    expect(sound.safeParse({ ...good, ...change }).success).toBe(false);
  });
});
