// SPDX-License-Identifier: MIT
// What is wrong with points before any line is drawn: too few, not numbers, too near each other, swapped, or one that
// lies far from what the parts allow. Words say what to do. It draws no line.
import type { Descriptor, Tap } from '../samples/rig-description.ts';
import { tapTitle } from '../samples/tap-titles.ts';
import { CalibrationRefused } from './calibration-refused.ts';
import type { CalibrationPoint } from './line-calibration.ts';
import { typicalValues } from './typical-values.ts';

/** Part of the tap's greatest typical value that the points must span. Common practice, no source. */
const leastSpan = 0.15;

/** Throws CalibrationRefused. */
export function requireSoundPoints(tap: Tap, points: readonly CalibrationPoint[]): void {
  requireNumbers(tap, points);
  if (points.length < 2)
    throw new CalibrationRefused(
      'tooFewPoints',
      `${tap.id}: ${points.length} point is not enough for gain and offset. Take at least two, far apart.`,
    );
  requireOrder(tap, points);
  requireSpan(tap, points);
}
function requireNumbers(tap: Tap, points: readonly CalibrationPoint[]): void {
  points.forEach(({ shown, meter }, i) => {
    if (![shown, meter].every(Number.isFinite))
      throw new CalibrationRefused(
        'notANumber',
        `${tap.id}, point ${i + 1}: the tap shows ${shown}, the meter ${meter}; both must be numbers. Take this point again.`,
      );
    if (shown <= tap.low || shown >= tap.high)
      throw new CalibrationRefused(
        'tapAtItsEnd',
        `${tap.id}, point ${i + 1}: ${shown.toPrecision(4)} ${tap.unit} is at the end of the tap's range (${tap.low} to ${tap.high}). Take a point inside.`,
      );
  });
}
/** By more than both could be off, the point that reads higher on the tap must read higher on the meter. */
function requireOrder(tap: Tap, points: readonly CalibrationPoint[]): void {
  const sorted = points.toSorted((a, b) => a.shown - b.shown);
  for (let i = 1; i < sorted.length; i++) {
    const [low, high] = [sorted[i - 1], sorted[i]];
    if (high.shown - low.shown < 4 * Math.hypot(high.shownU, low.shownU)) continue;
    if (high.meter - low.meter > -4 * Math.hypot(high.meterOwnU, low.meterOwnU)) continue;
    const [first, second] = [low, high].map((point) => points.indexOf(point) + 1).toSorted((a, b) => a - b);
    throw new CalibrationRefused(
      'swapped',
      `${tap.id}: where the tap shows more the meter shows less; points ${first} and ${second} look swapped. Enter them again in the order they were taken.`,
    );
  }
}
function requireSpan(tap: Tap, points: readonly CalibrationPoint[]): void {
  const least = leastSpan * Math.max(...typicalValues(tap));
  const values = points.map(({ meter }) => meter);
  const span = Math.max(...values) - Math.min(...values);
  if (span >= least) return;
  throw new CalibrationRefused(
    'tooNear',
    `${tap.id}: the points span ${span.toPrecision(3)} ${tap.unit}, at least ${least.toPrecision(3)} ${tap.unit} are needed to tell gain from offset. Take one point much lower or higher.`,
  );
}

export interface TakenPoint {
  readonly tap: Tap;
  readonly point: CalibrationPoint;
}
/** One reading of the meter beside all taps that lay on the same place: where every one of them differs from it by more
 *  than the parts of the rig allow, it is the reading. One tap alone that differs is the tap's affair and judged with
 *  its line. Throws CalibrationRefused. */
export function requireNearTaps(descriptor: Descriptor, taken: readonly TakenPoint[]): void {
  const far = taken.filter(({ tap, point }) => apart(point) > allowed(descriptor, tap, point));
  if (taken.length === 0 || far.length < taken.length) return;
  const [{ tap, point }] = far;
  const say = (value: number, digits: number) => `${Number(value.toPrecision(digits))} ${tap.unit}`;
  throw new CalibrationRefused(
    'implausiblePoint',
    `${tapTitle(tap.id)} shows ${say(point.shown, 3)} where the meter is said to show ${point.meter} ${tap.unit}. That is ${say(apart(point), 2)} apart; the parts of this rig allow ${say(allowed(descriptor, tap, point), 2)}. Read the meter again: its range, its leads, the figures typed. If it truly shows that, enter the same again.`,
  );
}
const apart = ({ shown, meter }: CalibrationPoint): number => Math.abs(meter - shown);

function allowed({ reference }: Descriptor, { error, scale }: Tap, point: CalibrationPoint): number {
  const zero = scale.kind === 'linear' ? Math.abs(scale.zeroV * scale.unitsPerV) : 0;
  const bounds =
    (error.gain + reference.tolerance) * Math.abs(point.shown) + error.offset + zero * reference.tolerance;
  const u = Math.hypot(point.shownU, point.meterOwnU, ...point.shared.map((part) => part.u));
  return bounds + 2 * u;
}
