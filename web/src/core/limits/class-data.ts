// SPDX-License-Identifier: MIT
// Default limits and typical values by check and part class: the one place they are written down. Each row says
// for what result and class, what is usual, where the limit lies, under what condition, and what its figures are
// worth. None of them has a published source. Electric motors of 540 size with two poles on two cells.
import { z } from 'zod';
import { linkageRows } from './linkage-class-data.ts';
import { radioRows } from './radio-class-data.ts';
import { motorRows } from './motor-class-data.ts';
import { servoRows } from './servo-class-data.ts';
import { supplyAllowances, supplyRows } from './supply-class-data.ts';

const marks = [
  'from memory, no source',
  'common practice, no source',
  'computed, from figures with no source',
];
const span = z.tuple([z.number().min(0), z.number().positive()]).refine(([low, high]) => low < high, {
  error: 'a range runs upwards',
});
export const classRowSchema = z
  .strictObject({
    result: z.string().regex(/^[a-z0-9-]+\/[a-z0-9-]+$/, 'a result is named check/result'),
    partClass: z.string().min(1),
    /** The class holds up to and with this many turns. */
    upToTurns: z.number().positive().optional(),
    /** The class is of packs of this chemistry. */
    chemistry: z.string().min(1).optional(),
    typical: span.optional(),
    unit: z.string().min(1),
    /** What the bounds are multiples of; absent: they are in the unit itself. */
    of: z
      .enum([
        'rail setting',
        'receiver floor',
        'one over turns',
        'electrical floor',
        'turns squared',
        'cells',
      ])
      .optional(),
    min: z.number().positive().optional(),
    max: z.number().positive().optional(),
    /** Watched below this share of the rail setting. */
    watchBelowSetting: z.number().positive().optional(),
    /** Watched beyond these; multiples as the bounds. */
    watchMin: z.number().positive().optional(),
    watchMax: z.number().positive().optional(),
    condition: z.string().min(1),
    mark: z.enum(marks),
  })
  .refine(({ min, max }) => min !== undefined || max !== undefined, 'a row bounds at least one side');
export type ClassRow = Readonly<z.infer<typeof classRowSchema>>;

const fromMemory = 'from memory, no source';
/** Upper end of the usual current times this stands in until there is a rating or a baseline. */
export const classAllowance = 1.25;
const noLoad = (partClass: string, upToTurns: number, low: number, high: number) => ({
  result: 'motor-no-load/no-load-current',
  partClass,
  upToTurns,
  typical: [low, high],
  unit: 'A',
  max: high * classAllowance,
  condition: `upper end of its class (${high} A) times ${classAllowance}, at 7.4 V without dynamic timing, until it has a baseline`,
  mark: fromMemory,
});
const kv = (partClass: string, upToTurns: number, low: number, high: number, turnsTimesKv: number[]) => ({
  result: 'motor-no-load/kv',
  partClass,
  upToTurns,
  typical: [low, high],
  unit: 'rpm/V',
  of: 'one over turns',
  min: turnsTimesKv[0],
  max: turnsTimesKv[1],
  condition: `turns times kV ${turnsTimesKv[0]} to ${turnsTimesKv[1]}; rises with timing`,
  mark: fromMemory,
});
const modified = [33_000, 37_000];
const spec = [36_000, 42_000];
const stall = (partClass: string, low: number, high: number) => ({
  result: 'servo-stall/stall-current',
  partClass,
  typical: [low, high],
  unit: 'A',
  min: low,
  max: high,
  condition: 'usual range of its class at 7.4 V',
  mark: fromMemory,
});
export const classRows: readonly ClassRow[] = z.array(classRowSchema).parse([
  noLoad('modified, 5.5 turns', 6, 7, 12),
  noLoad('modified, 6.5 turns', 7, 6, 9),
  noLoad('modified, 7.5 turns', 8, 5, 7),
  noLoad('modified, 8.5 turns', 9, 4, 6),
  noLoad('modified, 9.5 turns', 10, 4, 5.5),
  noLoad('spec, 10.5 turns', 12, 3.5, 6),
  noLoad('spec, 13.5 turns', 15, 3, 4.5),
  noLoad('spec, 17.5 turns', 19, 2, 3.5),
  noLoad('spec, 21.5 turns', 23, 1.5, 3),
  noLoad('spec, 25.5 turns', 60, 1, 2),
  kv('modified, 5.5 turns', 6, 6000, 6700, modified),
  kv('modified, 6.5 turns', 7, 5100, 5700, modified),
  kv('modified, 7.5 turns', 8, 4400, 4900, modified),
  kv('modified, 8.5 turns', 9, 3900, 4350, modified),
  kv('modified, 9.5 turns', 10, 3500, 3900, modified),
  kv('spec, 10.5 turns', 12, 3400, 4000, spec),
  kv('spec, 13.5 turns', 15, 2700, 3100, spec),
  kv('spec, 17.5 turns', 19, 2100, 2400, spec),
  kv('spec, 21.5 turns', 23, 1720, 1950, spec),
  kv('spec, 25.5 turns', 60, 1450, 1650, spec),
  stall('standard', 3.5, 7),
  stall('low-profile', 2.5, 5),
  {
    result: 'servo-stall/stall-current',
    partClass: 'any servo with rated torque and time',
    unit: 'A',
    of: 'electrical floor',
    min: 1,
    max: 2,
    condition: 'between rated torque times no-load speed over voltage, and twice that',
    mark: 'computed, from figures with no source',
  },
  {
    result: 'joint-drop/worst-joint',
    partClass: 'any joint',
    unit: '%',
    max: 100,
    condition: 'what its kind, or the copper of its gauge and length, may have',
    mark: 'computed, from figures with no source',
  },
  {
    result: 'winding-balance/winding-spread',
    partClass: 'any motor',
    unit: '%',
    max: 5,
    condition: 'one winding off by 10 % makes the pairs differ by 5 %',
    mark: 'common practice, no source',
  },
  {
    result: 'winding-balance/winding-mean',
    partClass: 'any motor of 540 size',
    unit: 'ohm',
    of: 'turns squared',
    min: 55e-6,
    max: 105e-6,
    condition: '65 to 90 microhm times turns squared at 20 °C, 15 % more either way',
    mark: fromMemory,
  },
  {
    result: 'throttle-range/throttle-start',
    partClass: 'any controller',
    typical: [3, 7],
    unit: '%',
    min: 1,
    max: 12,
    condition: 'of the travel to full throttle',
    mark: fromMemory,
  },
  {
    result: 'throttle-range/throttle-full-at',
    partClass: 'any controller',
    typical: [94, 99],
    unit: '%',
    min: 85,
    max: 100,
    condition: 'of the travel to full throttle',
    mark: fromMemory,
  },
  {
    result: 'throttle-range/throttle-end-growth',
    partClass: 'any controller',
    typical: [0, 60],
    unit: '%',
    max: 80,
    condition: 'a controller that knows its range gives all before the end of the travel',
    mark: fromMemory,
  },
  {
    result: 'rail-sag/source-resistance',
    partClass: 'any controller',
    typical: [0.02, 0.06],
    unit: 'ohm',
    max: 0.08,
    condition: 'at the receiver, wiring included',
    mark: fromMemory,
  },
  {
    result: 'rail-sag/steady-drop',
    partClass: 'any controller',
    unit: 'V',
    of: 'rail setting',
    max: 0.05,
    condition: '5 % of the setting',
    mark: fromMemory,
  },
  {
    result: 'rail-sag/deepest-dip',
    partClass: 'any controller',
    unit: 'V',
    of: 'receiver floor',
    min: 1,
    watchBelowSetting: 0.85,
    condition: "the receiver's minimum plus 0.5 V; watched from 85 % of the setting",
    mark: 'common practice, no source',
  },
  ...supplyRows,
  ...linkageRows,
  ...radioRows,
  ...servoRows,
  ...motorRows,
]);
/** How far a part may stray from its own rating or baseline, as shares; watch levels inside. From memory. */
export const allowances = {
  ...supplyAllowances,
  'motor-no-load/no-load-current': { above: 0.25, watchAbove: 0.15 },
  'motor-no-load/kv': { above: 0.03, below: 0.03 },
  'servo-stall/stall-current': { above: 0.15, below: 0.15 },
  'winding-balance/winding-mean': { above: 0.08, below: 0.08 },
  'servo-idle/centre-current': { above: 1, watchAbove: 0.5 },
  'servo-no-load/moving-current': { above: 0.5, watchAbove: 0.25 },
  'servo-no-load/sweep-current': { above: 0.5, watchAbove: 0.25 },
  'servo-speed/time-per-60': { above: 0.15 },
  'servo-speed/time-per-60-rated': { above: 0.15 },
  'servo-speed/time-per-600-us': { above: 0.15 },
  /** No usual share is known here: the part's own scatter alone, on the side that is worse. */
  'rail-sag/source-resistance': { above: 0 },
  'rail-sag/steady-drop': { above: 0 },
  'rail-sag/deepest-dip': { below: 0 },
  'rail-sag/recovery': { above: 0 },
  'servo-centre/horn-offset': { above: 0 },
  'servo-idle/hunting-current': { above: 0 },
  'servo-idle/hunting-pulses': { above: 0 },
  'servo-idle/dead-band': { above: 0 },
  'servo-no-load/direction-asymmetry': { above: 0 },
  'servo-no-load/tight-spot': { above: 0 },
} as const satisfies Readonly<
  Record<string, { readonly above?: number; readonly watchAbove?: number; readonly below?: number }>
>;
/** Torque (N.m) and seconds per 60 degrees usual at 7.4 V, to see a label typed in the wrong unit; from memory. */
export const servoClasses = {
  standard: { torqueNm: [1.41, 3.18], secondsPer60: [0.06, 0.12] },
  'low-profile': { torqueNm: [0.71, 1.77], secondsPer60: [0.05, 0.09] },
} as const;
