// SPDX-License-Identifier: MIT
// Rows of the class data for pack, first power, rail and ripple. None of them has a published source; each says what
// its figures are worth.

const fromMemory = 'from memory, no source';
const commonPractice = 'common practice, no source';

/** Volts of one resting cell: run down, half full, full, and where charger or chemistry must be wrong. */
interface CellVolts {
  readonly chemistry: string;
  readonly words: string;
  readonly empty: number;
  readonly half: number;
  readonly full: number;
  readonly most: number;
}
const cells: readonly CellVolts[] = [
  { chemistry: 'lipo', words: 'lithium polymer', empty: 3.3, half: 3.75, full: 4.2, most: 4.3 },
  {
    chemistry: 'liHv',
    words: 'high-voltage lithium polymer',
    empty: 3.3,
    half: 3.75,
    full: 4.35,
    most: 4.45,
  },
  { chemistry: 'lifepo4', words: 'lithium iron phosphate', empty: 3.0, half: 3.25, full: 3.6, most: 3.75 },
  { chemistry: 'nimh', words: 'nickel metal hydride', empty: 1.1, half: 1.25, full: 1.5, most: 1.65 },
];
const told = ({ empty, half, full, most }: CellVolts) =>
  `a resting cell is run down at ${empty} V, and none of the kind is charged to ${most} V; watched below ${half} V (half full) and above ${full} V (full)`;
const restRows = (result: string) =>
  cells.map((cell) => ({
    result: `rest-voltage/${result}`,
    partClass: cell.words,
    chemistry: cell.chemistry,
    unit: 'V',
    min: cell.empty,
    max: cell.most,
    watchMin: cell.half,
    watchMax: cell.full,
    condition: told(cell),
    mark: commonPractice,
    ...(result === 'pack-voltage' && { of: 'cells' }),
  }));

export const supplyRows = [
  ...restRows('pack-voltage'),
  ...restRows('lower-cell'),
  ...restRows('upper-cell'),
  {
    result: 'rest-voltage/pack-polarity',
    partClass: 'any pack',
    unit: 'V',
    min: 1,
    condition: 'plus where plus belongs; a reversed pack shows below zero',
    mark: commonPractice,
  },
  {
    result: 'rest-voltage/cell-imbalance',
    partClass: 'any pack',
    typical: [0, 0.01],
    unit: 'V',
    max: 0.2,
    condition:
      'so far apart one is damaged; they are commonly kept within 0.02 V, which a charger or a meter at the balance plug can tell and this bench cannot',
    mark: fromMemory,
  },
  {
    result: 'first-power/feed-polarity',
    partClass: 'any pack',
    unit: 'V',
    min: 1,
    condition: 'plus where plus belongs; a reversed pack shows below zero',
    mark: commonPractice,
  },
  {
    result: 'first-power/charge-reached',
    partClass: 'any controller',
    unit: '%',
    min: 90,
    condition: 'a quarter of a second after the limited feed closed; the diode in it takes 2 to 5 %',
    mark: 'computed, from figures with no source',
  },
  {
    result: 'first-power/capacitance',
    partClass: 'any controller',
    typical: [0.6e-3, 3e-3],
    unit: 'F',
    min: 0.48e-3,
    condition: '80 % of the smallest usual bank (0.6 mF), until its label or a baseline is known',
    mark: fromMemory,
  },
  {
    result: 'first-power/leak-current',
    partClass: 'any controller',
    unit: 'A',
    max: 0.05,
    condition: 'switched off, capacitor filled',
    mark: fromMemory,
  },
  {
    result: 'first-power/standby-current',
    partClass: 'any controller',
    typical: [0.04, 0.15],
    unit: 'A',
    max: 0.3,
    condition: 'switched on, without servo and fan',
    mark: fromMemory,
  },
  {
    result: 'rail-setting/rail-setting',
    partClass: 'any controller',
    unit: 'V',
    of: 'rail setting',
    min: 0.97,
    max: 1.03,
    condition: '3 % about the setting that was entered, with 0.5 V of head-room',
    mark: commonPractice,
  },
  {
    result: 'rail-setting/rail-in-race',
    partClass: 'any controller',
    unit: 'V',
    of: 'receiver floor',
    min: 1,
    watchBelowSetting: 0.85,
    condition: "the receiver's minimum plus 0.5 V; watched from 85 % of the setting",
    mark: commonPractice,
  },
  {
    result: 'pack-sag/pack-resistance',
    partClass: 'any 2S race pack',
    unit: 'ohm',
    max: 0.035,
    condition:
      'pack, plug and leads to the rig after a second of load, until a baseline of the pack is there: about twice a good one',
    mark: fromMemory,
  },
  {
    result: 'pack-sag/lower-cell-resistance',
    partClass: 'any cell of a race pack',
    unit: 'ohm',
    max: 0.012,
    condition:
      'after a second of load, until a baseline is there; tabs, balance board and lead are in it (cells alone are commonly below 5 mΩ)',
    mark: fromMemory,
  },
  {
    result: 'pack-sag/upper-cell-resistance',
    partClass: 'any cell of a race pack with its leads',
    unit: 'ohm',
    max: 0.022,
    condition: 'after a second of load, until a baseline is there; plug and leads to the rig are in it',
    mark: fromMemory,
  },
  {
    result: 'rail-ripple/rail-ripple-pp',
    partClass: 'any controller',
    typical: [0.03, 0.1],
    unit: 'V',
    max: 0.25,
    condition: 'peak to peak at the receiver, below 3.4 kHz',
    mark: fromMemory,
  },
  {
    result: 'pack-ripple/ripple-share',
    partClass: 'any controller with its capacitor',
    typical: [10, 60],
    unit: '%',
    max: 75,
    condition:
      "of the controller's own ripple current, until a baseline is there; without any capacitor it is near 100 %",
    mark: 'computed, from figures with no source',
  },
];

/** How far these may stray from their own baseline, as shares; 1 is twice as much. From memory. */
export const supplyAllowances = {
  'first-power/capacitance': { below: 0.2 },
  'first-power/leak-current': { above: 0 },
  'first-power/standby-current': { above: 0.5 },
  'pack-sag/pack-resistance': { above: 1 },
  'pack-sag/lower-cell-resistance': { above: 1 },
  'pack-sag/upper-cell-resistance': { above: 1 },
  'pack-sag/race-sag': { above: 1 },
  'pack-sag/dc-resistance': { above: 1 },
  'rail-ripple/rail-ripple-pp': { above: 1 },
  'rail-ripple/rail-ripple-rms': { above: 1 },
  'pack-ripple/ripple-share': { above: 1 },
} as const;
