// SPDX-License-Identifier: MIT
// Gain and offset of a linear tap from points (tap, meter), errors on both axes. Each point's own errors go through
// York's fit; errors that points share (the meter's per cent and its zero, by range) are put through it by
// repeating the fit with all their points moved (JCGM 100:2008, 5.1.3 note 2 and 5.2). What the rig declares counts as
// a second, independent estimate. It knows no rig's store.
import { yorkFit, type LineFit, type LinePoint } from '../measurements/york-fit.ts';
import type { Descriptor, Store, Tap } from '../samples/rig-description.ts';
import { rectangular } from '../measurements/tap-errors.ts';
import { CalibrationRefused } from './calibration-refused.ts';
import { together, type LineEstimate } from './line-estimate.ts';
import { meterNumber, readingOf, type Meter } from './meter.ts';
import { requireSoundPoints } from './point-checks.ts';
import { typicalValues } from './typical-values.ts';

export interface CalibrationPoint {
  /** What the tap shows without a calibration, and the standard uncertainty of that point's own errors. */
  readonly shown: number;
  readonly shownU: number;
  readonly meter: number;
  /** Rounding of the meter, standard uncertainty. */
  readonly meterOwnU: number;
  /** Standard uncertainties that all points with the same key share; those in proportion begin with "per cent". */
  readonly shared: readonly { readonly key: string; readonly u: number }[];
  /** Number of the meter; none of a point that needs no meter. */
  readonly meterNumber?: number;
}
export type CalibrationLine = Store['calibration'][number];
/** What a point was measured on. */
export interface TapPoint {
  readonly shown: number;
  readonly shownU: number;
  readonly meter: number;
}
/** Throws CalibrationRefused when the meter can't have shown that. */
export function pointOf(tap: Tap, meter: Meter, { shown, shownU, meter: value }: TapPoint): CalibrationPoint {
  const quantity = tap.quantity;
  const reading = readingOf(meter, quantity, value);
  const key = `${quantity} up to ${reading.range.upTo}`;
  return {
    shown,
    shownU,
    meter: value,
    meterOwnU: reading.roundingU,
    meterNumber: meterNumber(meter),
    shared: [
      { key: `per cent, ${key}`, u: reading.gainU },
      { key: `counts, ${key}`, u: reading.zeroU },
    ],
  };
}
/** No current can flow: a point that needs no meter. */
export const zeroPoint = (shown: number, shownU: number): CalibrationPoint => ({
  shown,
  shownU,
  meter: 0,
  meterOwnU: 0,
  shared: [],
});
export interface LineLabel {
  /** ISO 8601, the day. */
  readonly date: string;
  readonly origin: string;
}
/** Throws CalibrationRefused. */
export function lineCalibration(
  descriptor: Descriptor,
  tap: Tap,
  points: readonly CalibrationPoint[],
  label: LineLabel,
): CalibrationLine {
  requireSoundPoints(tap, points);
  const own = fitOf(points);
  requireLine(tap, points, own);
  const metered = withShared(points, own);
  requirePlausible(descriptor, tap, metered);
  const declared = declaredEstimate(descriptor, tap);
  const kept = together(declared, metered);
  const number = points.find((point) => point.meterNumber !== undefined)?.meterNumber;
  const share = perCentShare(tap, kept, perCentMoves(points, own, { declared, metered, kept }));
  return { ...keptLine(tap.id, kept, label), ...(number !== undefined && { meter: { number, share } }) };
}
interface Joined {
  readonly declared: LineEstimate;
  readonly metered: LineEstimate;
  readonly kept: LineEstimate;
}
type Move = Pick<LineEstimate, 'gain' | 'offset'>;
/** How far each range's per cent, by one standard uncertainty, moves what is kept. */
function perCentMoves(
  points: readonly CalibrationPoint[],
  own: LineFit,
  { declared, metered, kept }: Joined,
): Move[] {
  return sharedKeys(points)
    .filter((key) => key.startsWith('per cent'))
    .map((key) => movedBy(points, own, key))
    .map((by) =>
      together(declared, { ...metered, gain: metered.gain + by.gain, offset: metered.offset + by.offset }),
    )
    .map(({ gain, offset }) => ({ gain: gain - kept.gain, offset: offset - kept.offset }));
}
/** Part of the variance at the tap's greatest typical value; currents are read after a zero trim. */
function perCentShare(tap: Tap, kept: LineEstimate, moves: readonly Move[]): number {
  const at = Math.max(...typicalValues(tap));
  const trimmed = tap.quantity === 'current';
  const all = kept.gainVar * at ** 2 + (trimmed ? 0 : 2 * kept.covar * at + kept.offsetVar);
  const common = moves.reduce((sum, { gain, offset }) => sum + (gain * at + (trimmed ? 0 : offset)) ** 2, 0);
  return Math.min(1, common / all);
}
function keptLine(tap: string, estimate: LineEstimate, label: LineLabel): CalibrationLine {
  const { gain, offset, gainVar, offsetVar, covar } = estimate;
  const [uGain, uOffset] = [Math.sqrt(gainVar), Math.sqrt(offsetVar)];
  const correlation = covar / (uGain * uOffset);
  return { tap, gain, offset, gainU: 2 * uGain, offsetU: 2 * uOffset, correlation, ...label };
}
/** What the rig declares of the tap is known besides the meter: gain 1, offset 0, within its tolerances. The reference
 *  moves both where the pin has a zero of its own. */
function declaredEstimate({ reference }: Descriptor, { error, scale }: Tap): LineEstimate {
  const zero = scale.kind === 'linear' ? scale.zeroV * scale.unitsPerV : 0;
  const { tolerance = 0 } = error.shunt ?? {};
  const [own, shunt, all] = [error.gain - tolerance, tolerance, reference.tolerance].map(rectangular);
  return {
    gain: 1,
    offset: 0,
    gainVar: own ** 2 + shunt ** 2 + all ** 2,
    offsetVar: rectangular(error.offset) ** 2 + (zero * all) ** 2,
    covar: zero * all ** 2,
  };
}
const linePoint = ({ shown, shownU, meter, meterOwnU }: CalibrationPoint): LinePoint => ({
  x: shown,
  y: meter,
  ux: shownU,
  uy: meterOwnU,
});
/** Two points are laid twice with their variances doubled: the same line with the same uncertainty. */
function fitOf(points: readonly CalibrationPoint[]): LineFit {
  const plain = points.map(linePoint);
  const twice = plain.map(({ x, y, ux, uy }) => ({ x, y, ux: ux * Math.SQRT2, uy: uy * Math.SQRT2 }));
  const fit = yorkFit(plain.length > 2 ? plain : [...twice, ...twice]);
  if (!fit)
    throw new CalibrationRefused('tooNear', 'All points are at one value. Take one much lower or higher.');
  return fit;
}
/** Three points or more must lie on the line within what they may be off; a misread one stands out. */
function requireLine(tap: Tap, points: readonly CalibrationPoint[], { slope, intercept }: LineFit): void {
  // What the metered points share pulls the line away from a zero that needs no meter.
  const common = Math.max(...points.map(({ shared }) => Math.hypot(...shared.map((part) => part.u))));
  const off = points.map(({ shown, shownU, meter, meterOwnU }) => {
    const u = Math.hypot(slope * shownU, meterOwnU, common);
    return Math.abs(meter - intercept - slope * shown) / u;
  });
  const worst = off.indexOf(Math.max(...off));
  if (points.length < 3 || off[worst] <= 3) return;
  throw new CalibrationRefused(
    'notOnALine',
    `${tap.id}: point ${worst + 1} (tap ${points[worst].shown.toPrecision(4)}, meter ${points[worst].meter}) does not lie on a line with the others. Take it again.`,
  );
}
function withShared(points: readonly CalibrationPoint[], own: LineFit): LineEstimate {
  let [gainVar, covar, offsetVar] = [own.uSlope ** 2, own.covariance, own.uIntercept ** 2];
  for (const key of sharedKeys(points)) {
    const { gain, offset } = movedBy(points, own, key);
    gainVar += gain ** 2;
    covar += gain * offset;
    offsetVar += offset ** 2;
  }
  return { gain: own.slope, offset: own.intercept, gainVar, offsetVar, covar };
}
const sharedKeys = (points: readonly CalibrationPoint[]): string[] => [
  ...new Set(points.flatMap(({ shared }) => shared.map(({ key }) => key))),
];
/** What the line does when all points of one key move by their standard uncertainty. */
function movedBy(points: readonly CalibrationPoint[], own: LineFit, key: string): Move {
  const moved = fitOf(points.map((point) => ({ ...point, meter: point.meter + sharedU(point, key) })));
  return { gain: moved.slope - own.slope, offset: moved.intercept - own.intercept };
}
const sharedU = ({ shared }: CalibrationPoint, key: string): number =>
  shared.find((part) => part.key === key)?.u ?? 0;

/** A sound meter may lean both its ranges to opposite ends of their bounds: about three standard uncertainties. */
const meterBound = 3;

/** Sound parts can't be further off than the rig declares and the calibration itself allows. */
function requirePlausible({ reference }: Descriptor, tap: Tap, found: LineEstimate): void {
  const zero = tap.scale.kind === 'linear' ? Math.abs(tap.scale.zeroV * tap.scale.unitsPerV) : 0;
  const mostGain = tap.error.gain + reference.tolerance + meterBound * Math.sqrt(found.gainVar);
  const mostOffset = tap.error.offset + zero * reference.tolerance + meterBound * Math.sqrt(found.offsetVar);
  const percent = (share: number) => `${(100 * share).toPrecision(3)} %`;
  if (Math.abs(found.gain - 1) > mostGain)
    throw new CalibrationRefused(
      'implausibleGain',
      `${tap.id}: the meter and the tap differ by a factor of ${found.gain.toPrecision(4)}, that is ${percent(Math.abs(found.gain - 1))}; the parts of this rig allow ${percent(mostGain)}. Check the meter's range and leads and the wiring, and take the points again; if it stays so, the tap is broken.`,
    );
  if (Math.abs(found.offset) > mostOffset)
    throw new CalibrationRefused(
      'implausibleOffset',
      `${tap.id}: the offset would be ${found.offset.toPrecision(3)} ${tap.unit}; the parts of this rig allow ${mostOffset.toPrecision(3)} ${tap.unit}. Zero the meter, check the leads, and take the points again.`,
    );
}
