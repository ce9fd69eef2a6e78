// SPDX-License-Identifier: MIT
// Whether a calibration makes a tap better: U of one reading at its typical values, with the line and without it,
// through the very budget that checks use. Adopted when it is nowhere worse and somewhere better; said in words
// with both figures. It stores nothing.
import { halfWidth } from '../measurements/coverage-interval.ts';
import { budgetOf, uncertain } from '../measurements/quantity.ts';
import { gainLines, linearityLines, pinShare, zeroLine } from '../measurements/tap-errors.ts';
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
export function adoption(rig: RigDescription, tap: Tap, line: CalibrationLine): Adoption {
  const plain = { ...rig, store: null };
  const tightness = typicalValues(tap).map((at) => ({
    at,
    declaredU: tapU(plain, tap, at),
    calibratedU: tapU(withLine(plain, line), tap, at),
  }));
  const worse = tightness.some(({ declaredU, calibratedU }) => calibratedU > declaredU * 1.0005);
  const better = tightness.some(({ declaredU, calibratedU }) => calibratedU < declaredU * 0.995);
  const adopted = better && !worse;
  return { adopted, tightness, words: wordsOf(tap, tightness, adopted) };
}
/** U of one reading at a value; currents are read after a zero trim. Noise is left out: it is the run's. */
export function tapU(rig: RigDescription, tap: Tap, value: number): number {
  const trimmed = tap.quantity === 'current';
  const { nominalSupplyV: supplyV } = rig.descriptor;
  const at = { code: codeAt(tap, value, supplyV), share: pinShare(tap, value, trimmed), supplyV };
  const linearity = tap.scale.kind === 'linear' ? linearityLines(rig, tap, at) : [];
  const lines = [...gainLines(rig, tap, value, trimmed), zeroLine(rig, tap, trimmed), ...linearity];
  return halfWidth(budgetOf(uncertain(value, lines)));
}
export const withLine = (rig: RigDescription, line: CalibrationLine): RigDescription => {
  const { serial = '', name = '', calibration = [] } = rig.store ?? {};
  const others = calibration.filter(({ tap }) => tap !== line.tap);
  return { ...rig, store: { serial, name, calibration: [...others, line] } };
};
function wordsOf(tap: Tap, tightness: readonly Tightness[], adopted: boolean): string {
  const figures = tightness.map(
    ({ at, declaredU, calibratedU }) =>
      `at ${at} ${tap.unit}: ${percent(declaredU, at)} as declared, ${percent(calibratedU, at)} calibrated`,
  );
  const verdict = adopted
    ? 'adopted'
    : 'not adopted, as it would not make the uncertainty smaller; a meter with a better specification would';
  return `${tap.id}: ${verdict} (U ${figures.join('; ')}).`;
}
const percent = (u: number, at: number): string => `${((100 * u) / Math.abs(at)).toPrecision(2)} %`;
