// SPDX-License-Identifier: MIT
// The units of charts: a tap's own, temperatures in the unit that the person chose. Pure; differences and slopes know
// no offset.
import { differenceFromSi, fromSi, units } from '#core/units/units';

export const temperatures = ['celsius', 'fahrenheit'] as const;
export type Temperature = (typeof temperatures)[number];
export interface ChartUnit {
  readonly symbol: string;
  /** Decimals of a single value. */
  readonly decimals: number;
  value(si: number): number;
  difference(si: number): number;
}
const same = (x: number) => x;
const decimals: Readonly<Record<string, number>> = { V: 2, A: 2 };

export function chartUnit(unit: string, temperature: Temperature): ChartUnit {
  if (unit !== 'C') return { symbol: unit, decimals: decimals[unit] ?? 0, value: same, difference: same };
  return {
    symbol: units[temperature].symbol,
    decimals: 1,
    value: (si) => fromSi(si, temperature),
    difference: (si) => differenceFromSi(si, temperature),
  };
}
