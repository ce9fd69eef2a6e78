// SPDX-License-Identifier: MIT
// The error model of a rig's taps as named sources: gain, offset or drift after a zero trim, non-linearity,
// quantisation, reference, clock. Half-widths come from the rig's description, from its calibration where it
// has one. It knows no samples and no checks.
import type { RigDescription, Tap } from '../samples/rig-description.ts';
import type { ClockFit } from '../samples/sample-store.ts';
import { stepOf } from '../samples/tap-scaling.ts';
import type { Source } from './quantity.ts';

export type Line = readonly [source: Source, u: number];
const root3 = Math.sqrt(3);
/** A rectangle's half-width as a standard uncertainty (JCGM 100:2008, 4.3.7). */
export const rectangular = (halfWidth: number): number => halfWidth / root3;

export const typeB = (id: string, words: string, origin: string): Source => ({
  id,
  words,
  shape: 'rectangular',
  dof: Number.POSITIVE_INFINITY,
  origin,
});
export const typeA = (id: string, words: string, dof: number): Source => ({
  id,
  words,
  shape: 'student',
  dof,
  origin: 'statistics of this run',
});
const declared = 'rig description';
const calibrated = (rig: RigDescription, tap: string) =>
  rig.store?.calibration.find((line) => line.tap === tap);

/** Errors in proportion to the value: gain, and the reference that every volt is read against. */
export function gainLines(rig: RigDescription, tap: Tap, value: number, zeroTrimmed: boolean): Line[] {
  const kept = calibrated(rig, tap.id);
  if (kept) {
    const source: Source = {
      ...typeB(`gain ${tap.id}`, `gain of ${tap.id}`, `calibration of ${kept.date}`),
      shape: 'normal',
    };
    return [[source, (value * kept.gainU) / 2]];
  }
  const share = pinShare(tap, value, zeroTrimmed);
  return [
    [typeB(`gain ${tap.id}`, `gain of ${tap.id}`, declared), rectangular(value * tap.error.gain)],
    [
      typeB('reference', 'reference voltage', declared),
      rectangular(share * rig.descriptor.reference.tolerance),
    ],
    [
      typeB('reference linearity', 'converter non-linearity at the reference', declared),
      rectangular(share * referenceInl(rig, tap)),
    ],
  ];
}
/** What a relative error of the supply does: all of the pin's voltage counts unless the zero was trimmed away. */
export function pinShare(tap: Tap, value: number, zeroTrimmed: boolean): number {
  if (tap.scale.kind !== 'linear') return 0;
  return zeroTrimmed ? value : value + tap.scale.zeroV * tap.scale.unitsPerV;
}
/** Non-linearity of the one reading that all volts hang on, relative; the reference stands at half the span. */
function referenceInl(rig: RigDescription, tap: Tap): number {
  const code = (rig.descriptor.reference.volts / rig.descriptor.nominalSupplyV) * 1024;
  return tap.error.inlLsb / code;
}
/** Zero: the whole offset before a trim, only its drift after one. */
export function zeroLine(rig: RigDescription, tap: Tap, zeroTrimmed: boolean): Line {
  const kept = calibrated(rig, tap.id);
  if (zeroTrimmed)
    return [typeB(`drift ${tap.id}`, `zero drift of ${tap.id}`, declared), rectangular(tap.error.drift)];
  if (!kept)
    return [typeB(`offset ${tap.id}`, `offset of ${tap.id}`, declared), rectangular(tap.error.offset)];
  const source: Source = {
    ...typeB(`offset ${tap.id}`, `offset of ${tap.id}`, `calibration of ${kept.date}`),
    shape: 'normal',
  };
  return [source, kept.offsetU / 2];
}
/** Non-linearity at one code: readings at the same code share it, others don't. */
export function linearityLine(tap: Tap, value: number, supplyV: number): Line {
  const step = stepOf(tap, supplyV);
  const place = Math.round(value / step);
  const source = typeB(`linearity ${tap.channel} ${place}`, `converter non-linearity of ${tap.id}`, declared);
  return [source, rectangular(tap.error.inlLsb * step)];
}
/** Rounding left in a mean of noisy codes: amplitude exp(-2 pi^2 s^2)/pi of a step, s the noise in steps; at most
 *  half a step where nothing dithers (Widrow, Kollar, Quantization Noise, 2008: from memory). */
export function quantisationLine(tap: Tap, id: string, sdOfOne: number, supplyV: number): Line {
  const step = stepOf(tap, supplyV);
  const s = sdOfOne / step;
  const left = Math.min(0.5, Math.exp(-2 * Math.PI ** 2 * s ** 2) / Math.PI);
  return [
    typeB(`quantisation ${id}`, `rounding of ${tap.id}`, 'computed from the noise seen'),
    rectangular(left * step),
  ];
}
export function clockLine(clock: ClockFit, value: number): Line {
  const origin = clock.origin === 'fit' ? 'fit against the computer clock' : declared;
  return [typeB('clock', "the rig's clock", origin), rectangular(Math.abs(value) * clock.halfWidth)];
}
