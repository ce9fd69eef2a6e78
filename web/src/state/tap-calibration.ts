// SPDX-License-Identifier: MIT
// How each tap of a rig stands with its calibration: from when, old or missing, what U it gives at a usual value and
// what that is made of. From what the rig says and keeps, in its units, whatever a person chose to see results in;
// computes by the core's own budget.
import { tapBudget } from '#core/calibration/adoption';
import { agedStore, isOld } from '#core/calibration/calibration-age';
import { feedResistance, limitedFeedId } from '#core/calibration/limited-feed';
import { typicalValues } from '#core/calibration/typical-values';
import { halfWidth } from '#core/measurements/coverage-interval';
import type { BudgetLine } from '#core/measurements/measurement';
import type { RigDescription, Tap } from '#core/samples/rig-description';
import { tapTitle } from '#core/samples/tap-titles';
import { usualWish } from '#core/units/shown-unit';
import { budgetRows, type BudgetRow } from './budget-rows.ts';
import { decimalsFor, figure, shownUnit } from './figures.ts';

export type CalibrationState = 'calibrated' | 'old' | 'missing';
export interface TapCalibration {
  readonly tap: string;
  readonly title: string;
  /** What must be wired for it: taps of one group are done in one wiring. */
  readonly group: 'voltage' | 'packCurrent' | 'railCurrent' | 'temperature' | 'feed';
  readonly state: CalibrationState;
  readonly date: string | null;
  /** "with the meter", "in melting ice". */
  readonly by: string | null;
  /** "± 0.21 V at 6 V", by what counts today. */
  readonly now: string;
  /** The same by what the rig declares; null where that is what counts. */
  readonly declared: string | null;
  readonly unit: string;
  readonly budget: readonly BudgetRow[];
}
const origins: Readonly<Record<string, string>> = {
  meter: 'with the meter',
  ice: 'in melting ice',
  together: 'against the other thermistors',
  taps: "by the rig's own taps",
};
export const stateWords: Readonly<Record<CalibrationState, string>> = {
  calibrated: 'Calibrated',
  old: 'Old',
  missing: 'Missing',
};
export const calibratedTitle = (tap: string): string =>
  tap === limitedFeedId ? "Limited feed's resistor" : tapTitle(tap);

/** `kept` is the store as the rig keeps it. */
export function tapCalibrations(
  kept: RigDescription,
  ids: readonly string[],
  today: string,
): readonly TapCalibration[] {
  const counted = { ...kept, store: kept.store && agedStore(kept.store, today) };
  return ids.map((id) => {
    const line = kept.store?.calibration.find(({ tap }) => tap === id);
    const tap = kept.descriptor.taps.find((each) => each.id === id);
    const u = tap ? tapWidths(tap, counted) : feedWidths(counted);
    return {
      tap: id,
      title: calibratedTitle(id),
      group: groupOf(id, tap),
      state: !line ? 'missing' : isOld(line, today) ? 'old' : 'calibrated',
      date: line?.date ?? null,
      by: line ? (origins[line.origin] ?? line.origin) : null,
      ...u,
      declared: line ? u.declared : null,
    };
  });
}
function groupOf(id: string, tap: Tap | undefined): TapCalibration['group'] {
  if (!tap) return 'feed';
  if (tap.quantity !== 'current') return tap.quantity;
  return id === 'railCurrent' ? 'railCurrent' : 'packCurrent';
}
type Widths = Pick<TapCalibration, 'now' | 'declared' | 'unit' | 'budget'>;

function tapWidths(tap: Tap, counted: RigDescription): Widths {
  const at = usualValue(tap);
  const lines = tapBudget(counted, tap, at);
  const shown = shownUnit(tap.unit, at, usualWish);
  const declared = tapBudget({ ...counted, store: null }, tap, at);
  const where = `at ${figure(at, Number.isInteger(at) ? 0 : 1)}\u00a0${shown.unit}`;
  return {
    now: `${plusMinus(halfWidth(lines), tap.unit)} ${where}`,
    declared: `${plusMinus(halfWidth(declared), tap.unit)} ${where}`,
    unit: shown.unit,
    budget: budgetRows(lines, shown),
  };
}
const usualValue = (tap: Tap): number => {
  const values = typicalValues(tap);
  return values[Math.floor((values.length - 1) / 2)];
};
function feedWidths(counted: RigDescription): Widths {
  const { ohm, u, origin } = feedResistance(counted);
  const declared = feedResistance({ ...counted, store: null });
  const line = (width: number, from: string): BudgetLine => ({
    source: "limited feed's resistor",
    u: width,
    shape: 'rectangular',
    dof: Number.POSITIVE_INFINITY,
    origin: from,
  });
  const say = (value: number, width: number) =>
    `${plusMinus(halfWidth([line(width, '')]), 'ohm')} at ${figure(value, 2)}\u00a0Ω`;
  return {
    now: say(ohm, u),
    declared: say(declared.ohm, declared.u),
    unit: 'Ω',
    budget: budgetRows([line(u, origin)], shownUnit('ohm', ohm, usualWish)),
  };
}
/** A difference in kelvin is a difference in degrees Celsius. */
export function plusMinus(half: number, unit: string): string {
  const shown = unit === 'C' ? { factor: 1, unit: 'K' } : smallUnit(unit, half);
  return `±\u00a0${figure(half * shown.factor, decimalsFor(half * shown.factor))}\u00a0${shown.unit}`;
}
/** Volts and amperes below a tenth are told in thousandths. */
export const smallUnit = (unit: string, size: number) =>
  (unit === 'V' || unit === 'A') && Math.abs(size) < 0.1
    ? { factor: 1000, unit: `m${unit}` }
    : { factor: 1, unit: shownUnit(unit, 1, usualWish).unit };

/** "3 of 10 calibrated, 1 old, 6 missing". */
export function calibrationTally(rows: readonly TapCalibration[]): string {
  const count = (state: CalibrationState) => rows.filter((row) => row.state === state).length;
  const [old, missing] = [count('old'), count('missing')];
  const parts = [`${count('calibrated')} of ${rows.length} calibrated`];
  if (old > 0) parts.push(`${old} old`);
  if (missing > 0) parts.push(`${missing} missing`);
  return parts.join(', ');
}
