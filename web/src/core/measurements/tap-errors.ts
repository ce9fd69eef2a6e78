// SPDX-License-Identifier: MIT
// The error model of a rig's taps as named sources: gain, offset or drift after a zero trim, non-linearity,
// quantisation, reference, clock. Half-widths come from the rig's description, from its calibration where it
// has one. It knows no samples and no checks.
import type { RigDescription, Tap } from '../samples/rig-description.ts';
import type { ClockFit } from '../samples/sample-store.ts';
import { codesPerSpan, stepOf } from '../samples/tap-scaling.ts';
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

/** Errors in proportion to the value: gain, and the reference that every volt is read against. What ties a
 *  calibration's offset to its gain is in the gain's line, as is what its offset has of the meter; the rest of the offset
 *  in the zero's. */
export function gainLines(rig: RigDescription, tap: Tap, value: number, zeroTrimmed: boolean): Line[] {
  const kept = calibrated(rig, tap.id);
  if (kept) {
    const tied = zeroTrimmed ? 0 : (kept.correlation * kept.offsetU) / 2;
    const gain = withMeter(tap, kept, 'gain', (value * kept.gainU) / 2 + tied);
    return zeroTrimmed ? gain : [...gain, ...keptZero(tap, kept).slice(1)];
  }
  const share = pinShare(tap, value, zeroTrimmed);
  return [
    ...ownGainLines(tap, value),
    [
      typeB('reference', 'reference voltage', declared),
      rectangular(share * rig.descriptor.reference.tolerance),
    ],
    [
      typeB('reference linearity', 'converter non-linearity at the reference', declared),
      rectangular(share * ownShare * tap.error.inlLsb * (1 / referenceCode(rig))),
    ],
  ];
}
type Kept = NonNullable<ReturnType<typeof calibrated>>;
/** The tap's own part of a calibration first; then what it shares with all taps that one meter calibrated. */
function withMeter({ id, quantity }: Tap, { date, meter }: Kept, of: 'gain' | 'offset', u: number): Line[] {
  const source = (key: string, words: string): Source => ({
    ...typeB(`${of} ${key}`, `${of} of ${words}`, `calibration of ${date}`),
    shape: 'normal',
  });
  const share = meter?.share ?? 0;
  const own: Line = [source(id, id), u * Math.sqrt(1 - share)];
  if (!meter) return [own];
  return [
    own,
    [source(`meter ${meter.number} ${quantity}`, `the meter on ${quantity}`), u * Math.sqrt(share)],
  ];
}
const keptZero = (tap: Tap, kept: Kept): Line[] =>
  withMeter(tap, kept, 'offset', (kept.offsetU / 2) * Math.sqrt(1 - kept.correlation ** 2));
/** The shunt and what is the tap's own: two parts of independent makes, so two lines. */
function ownGainLines({ id, error }: Tap, value: number): Line[] {
  const { gain, shunt } = error;
  const own: Line = [
    typeB(`gain ${id}`, `gain of ${id}`, declared),
    rectangular(value * (gain - (shunt?.tolerance ?? 0))),
  ];
  if (!shunt) return [own];
  return [
    [typeB(`shunt ${shunt.name}`, `${shunt.name} shunt`, declared), rectangular(value * shunt.tolerance)],
    own,
  ];
}
/** What a relative error of the supply does: all of the pin's voltage counts unless the zero was trimmed away. */
export function pinShare(tap: Tap, value: number, zeroTrimmed: boolean): number {
  if (tap.scale.kind !== 'linear') return 0;
  return zeroTrimmed ? value : value + tap.scale.zeroV * tap.scale.unitsPerV;
}
/** The reference stands at about half the span. */
const referenceCode = ({ descriptor }: RigDescription): number =>
  (descriptor.reference.volts / descriptor.nominalSupplyV) * codesPerSpan;
/** Zero: the whole offset before a trim, only its drift after one. */
export function zeroLine(rig: RigDescription, tap: Tap, zeroTrimmed: boolean): Line {
  const kept = calibrated(rig, tap.id);
  if (zeroTrimmed)
    return [typeB(`drift ${tap.id}`, `zero drift of ${tap.id}`, declared), rectangular(tap.error.drift)];
  if (!kept)
    return [typeB(`offset ${tap.id}`, `offset of ${tap.id}`, declared), rectangular(tap.error.offset)];
  return keptZero(tap, kept)[0];
}
/** How the declared non-linearity is split: a bow over the whole span that every code of the converter shares, and
 *  a part of each code's own (from memory of such converters; together they stay near the declared bound). */
const bowShare = 0.7;
export const ownShare = 0.5;
/** Codes so near each other share their own part: two readings of one level are off alike, though their means differ by
 *  a fraction of a code. */
const sharedCodes = 4;
/** Non-linearity at one code. The bow is a parabola over the span and acts on the reference reading as well, so
 *  what it does to a value falls out near the reference and in differences; the rest is shared by near codes only. */
export function linearityLines(rig: RigDescription, tap: Tap, at: LinearityAt): Line[] {
  const step = stepOf(tap, at.supplyV, at.code);
  const x = at.code / codesPerSpan;
  const bow = 4 * x * (1 - x) * step - at.share / referenceCode(rig);
  const own = `linearity ${tap.channel} ${Math.round(at.code / sharedCodes)}`;
  // A thermistor divides the supply itself: its share is zero and the reference's bow is no part of it.
  return [
    [
      typeB('bow', 'bow of the converter over its span', declared),
      rectangular(bowShare * tap.error.inlLsb) * bow,
    ],
    [
      typeB(own, `converter non-linearity of ${tap.id}`, declared),
      rectangular(ownShare * tap.error.inlLsb * step),
    ],
  ];
}
export interface LinearityAt {
  /** Mean code of one conversion. */
  readonly code: number;
  /** What of the value hangs on the supply reading, in the tap's unit (see pinShare). */
  readonly share: number;
  readonly supplyV: number;
}
/** Rounding left in a mean of noisy codes: amplitude exp(-2 pi^2 s^2)/pi of a step, s the noise in steps; at most
 *  half a step where nothing dithers (Widrow, Kollar, Quantization Noise, 2008: from memory). */
export function quantisationLine(
  tap: Tap,
  id: string,
  sdOfOne: number,
  supplyV: number,
  code?: number,
): Line {
  const step = Math.abs(stepOf(tap, supplyV, code));
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
