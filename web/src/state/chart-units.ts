// SPDX-License-Identifier: MIT
// The units of charts: a tap's own or the one that the person chose for its kind. Pure; differences and slopes know no
// offset.
import { shownUnit, type ShownUnit, type UnitWish } from '#core/units/shown-unit';
import { liveDecimals } from './figures.ts';

export interface ChartUnit extends ShownUnit {
  /** Decimals of a single value. */
  readonly decimals: number;
}
export const chartUnit = (unit: string, wish: UnitWish): ChartUnit => ({
  ...shownUnit(unit, 1, wish),
  decimals: liveDecimals(unit),
});
