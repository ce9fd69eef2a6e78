// SPDX-License-Identifier: MIT
// Whether a calibration makes a tap better: U of one reading at its typical values, with the new line and without,
// through the very budget that checks use. Adopted when it is nowhere worse and somewhere better than declared;
// said in words with both figures. It stores nothing.
import { halfWidth } from '../measurements/coverage-interval.ts';
import type { BudgetLine } from '../measurements/measurement.ts';
import { budgetOf, uncertain } from '../measurements/quantity.ts';
import { linearityLines, pinShare } from '../measurements/tap-errors.ts';
import { scaleLines } from '../measurements/tap-reading.ts';
import { codeAt } from '../samples/tap-scaling.ts';
import type { RigDescription, Tap } from '../samples/rig-description.ts';
import type { CalibrationLine } from './line-calibration.ts';
import { typicalValues } from './typical-values.ts';

export interface Tightness {
  readonly at: number;
  /** Half-width of the 95 % interval, in the tap's unit: as declared, and with the new line. */
  readonly declaredU: number;
  readonly calibratedU: number;
}
export interface Adoption {
  readonly adopted: boolean;
  readonly tightness: readonly Tightness[];
  readonly words: string;
}
/** A newer calibration takes the place of one that is tighter by less than this. Common practice, no source. */
const sameTightness = 1.1;

/** Less than a tenth off U is not worth a line in the rig's memory. Common practice, no source. */
const worthwhile = 0.9;

/** `rig` as it counts now. */
export function adoption(rig: RigDescription, tap: Tap, line: CalibrationLine): Adoption {
  const plain = { ...rig, store: null };
  const tightness = typicalValues(tap).map((at) => ({
    at,
    declaredU: tapU(plain, tap, at),
    calibratedU: tapU(withLine(plain, line), tap, at),
  }));
  const worse = tightness.some(({ declaredU, calibratedU }) => calibratedU > declaredU * 1.0005);
  const better = tightness.some(({ declaredU, calibratedU }) => calibratedU < worthwhile * declaredU);
  const kept = rig.store?.calibration.find((known) => known.tap === line.tap);
  const moved = kept !== undefined && disagree(tap, kept, line);
  const older =
    kept !== undefined &&
    !moved &&
    tightness.some(({ at, calibratedU }) => calibratedU > sameTightness * tapU(rig, tap, at));
  const adopted = better && !worse && !older;
  const why = older ? `not adopted, as the calibration of ${kept?.date} is tighter` : reason(adopted);
  const told = moved ? ` It differs from the calibration of ${kept.date} by more than both allow.` : '';
  return { adopted, tightness, words: `${tap.id}: ${why} (U ${figures(tap, tightness)}).${told}` };
}
const reason = (adopted: boolean): string =>
  adopted
    ? 'adopted'
    : 'not adopted, as it would not make the uncertainty smaller by a tenth; a meter with a better specification would';

/** At a typical value the two lie apart by more than their uncertainties together. */
function disagree(tap: Tap, a: CalibrationLine, b: CalibrationLine): boolean {
  return typicalValues(tap).some((at) => {
    const apart = Math.abs((a.gain - b.gain) * at + (tap.quantity === 'current' ? 0 : a.offset - b.offset));
    return apart > Math.hypot(lineU(tap, a, at), lineU(tap, b, at));
  });
}
/** U of the line alone at a value. */
export function lineU(tap: Tap, { gainU, offsetU, correlation }: CalibrationLine, at: number): number {
  if (tap.quantity === 'current') return gainU * at;
  return Math.sqrt((gainU * at) ** 2 + 2 * correlation * gainU * at * offsetU + offsetU ** 2);
}
/** U of one reading at a value; currents are read after a zero trim. Noise is left out: it is the run's. */
export const tapU = (rig: RigDescription, tap: Tap, value: number): number =>
  halfWidth(tapBudget(rig, tap, value));

/** The lines that U is made of, as in a check's result. */
export function tapBudget(rig: RigDescription, tap: Tap, value: number): readonly BudgetLine[] {
  const trimmed = tap.quantity === 'current';
  const { nominalSupplyV: supplyV } = rig.descriptor;
  const at = { code: codeAt(tap, value, supplyV), share: pinShare(tap, value, trimmed), supplyV };
  const lines = [...scaleLines(rig, tap, value, trimmed), ...linearityLines(rig, tap, at)];
  return budgetOf(uncertain(value, lines));
}
export const withLine = (rig: RigDescription, line: CalibrationLine): RigDescription => {
  const { serial = '', name = '', calibration = [] } = rig.store ?? {};
  const others = calibration.filter(({ tap }) => tap !== line.tap);
  return { ...rig, store: { serial, name, calibration: [...others, line] } };
};
function figures(tap: Tap, tightness: readonly Tightness[]): string {
  const told = ({ at, declaredU, calibratedU }: Tightness) =>
    tap.quantity === 'temperature'
      ? `at ${at} °C: ${declaredU.toFixed(2)} K as declared, ${calibratedU.toFixed(2)} K calibrated`
      : `at ${at} ${tap.unit}: ${percent(declaredU, at)} as declared, ${percent(calibratedU, at)} calibrated`;
  return tightness.map(told).join('; ');
}
const percent = (u: number, at: number): string => `${((100 * u) / Math.abs(at)).toPrecision(2)} %`;
