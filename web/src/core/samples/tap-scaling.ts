// SPDX-License-Identifier: MIT
// From converter codes to SI and back again for one tap: the pin's scale, the thermistor's curve, the
// calibration kept on the rig, and what counts as clipped. It does not know where the codes came from.
import type { RigDescription, Tap } from './rig-description.ts';

export const codesPerSpan = 1024;
const kelvinAtZeroC = 273.15;
const kelvinAt25C = 298.15;

export interface TapScaling {
  readonly tap: Tap;
  readonly gain: number;
  readonly offset: number;
}
export function tapScaling(rig: RigDescription, id: string): TapScaling | null {
  const tap = rig.descriptor.taps.find((known) => known.id === id);
  if (!tap) return null;
  const kept = rig.store?.calibration.find((line) => line.tap === id);
  return { tap, gain: kept?.gain ?? 1, offset: kept?.offset ?? 0 };
}
/** Volts at the pin; `code` may be the mean of several conversions. The ideal first step is at half a code. */
export const pinV = (code: number, supplyV: number): number => (code * supplyV) / codesPerSpan;

/** SI value of a mean code. A thermistor divides the supply itself, so the supply falls out. */
export function scaled(scaling: TapScaling, code: number, supplyV: number): number {
  const { scale } = scaling.tap;
  const plain =
    scale.kind === 'linear'
      ? (pinV(code, supplyV) - scale.zeroV) * scale.unitsPerV
      : thermistorC(code, scale.pullUpOhm, scale.r25Ohm, scale.betaK);
  return plain * scaling.gain + scaling.offset;
}
/** 1/T = 1/T25 + ln(R/R25)/B with the thermistor low and the pull-up to the converter's reference. */
export function thermistorC(code: number, pullUpOhm: number, r25Ohm: number, betaK: number): number {
  const ohm = (pullUpOhm * code) / (codesPerSpan - code);
  return 1 / (1 / kelvinAt25C + Math.log(ohm / r25Ohm) / betaK) - kelvinAtZeroC;
}
/** The way back: thermistor against pull-up at a temperature, as a code. */
export function thermistorCode(celsius: number, { pullUpOhm, r25Ohm, betaK }: ThermistorScale): number {
  const ohm = r25Ohm * Math.exp(betaK * (1 / (celsius + kelvinAtZeroC) - 1 / kelvinAt25C));
  return (codesPerSpan * ohm) / (ohm + pullUpOhm);
}
type ThermistorScale = Extract<Tap['scale'], { kind: 'ntc' }>;

/** Size of one conversion step in the tap's unit; a thermistor's depends on where it stands, and fewer codes are more
 *  degrees: dT/dcode = -T^2/B x 1024/(code (1024 - code)). NaN for a thermistor without a code. */
export function stepOf({ scale }: Tap, supplyV: number, code = Number.NaN): number {
  if (scale.kind === 'linear') return (supplyV / codesPerSpan) * Math.abs(scale.unitsPerV);
  const kelvin = thermistorC(code, scale.pullUpOhm, scale.r25Ohm, scale.betaK) + kelvinAtZeroC;
  return ((-(kelvin ** 2) / scale.betaK) * codesPerSpan) / (code * (codesPerSpan - code));
}
/** Code at which a tap shows a value; the way back of `scaled` without a calibration. */
export function codeAt({ scale }: Tap, value: number, supplyV: number): number {
  if (scale.kind === 'ntc') return thermistorCode(value, scale);
  return ((value / scale.unitsPerV + scale.zeroV) / supplyV) * codesPerSpan;
}
/** True when the mean of `count` conversions touches an end of the converter or of the tap's range. */
export function isClipped(tap: Tap, code: number, count: number, value: number): boolean {
  const oneStep = 1 / count;
  const belowEnd = tap.low < 0 && (code < oneStep + 1e-9 || value <= tap.low);
  return belowEnd || code > codesPerSpan - 1 - oneStep - 1e-9 || value >= tap.high;
}
