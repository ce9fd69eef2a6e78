// SPDX-License-Identifier: MIT
// What would settle an undecided result, in words a person can act on: repeats, a calibration of a tap, or that
// the part stands on its limit. It turns numbers into sentences and works out none of them.
import type { Measured } from '../measurements/measurement.ts';
import type { Limit } from './limit.ts';
import { repeatsAtMost, settlingOf, type Settling, type WithCalibrated } from './settling.ts';

export function whatWouldSettle(finding: Measured, limit: Limit, withCalibrated?: WithCalibrated): string {
  const settling = settlingOf(finding, limit, withCalibrated);
  return [
    near(settling, finding.unit),
    ruling(settling),
    repeats(settling),
    calibration(settling, finding.unit),
    end(settling, finding.unit),
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}
const near = ({ distance, half }: Settling, unit: string): string =>
  `The value is ${figure(distance)} ${unit} from its limit and known to ${figure(half)} ${unit}.`;
const ruling = ({ dominant }: Settling): string =>
  dominant ? `${capital(dominant.source)} makes ${Math.round(dominant.share * 100)} % of the doubt.` : '';

function repeats({ repeats: count }: Settling): string {
  if (count !== null) return `${count} runs averaged would settle it, if their mean stays here.`;
  return `Repeats don't help: not even ${repeatsAtMost} runs averaged would settle it.`;
}
function calibration({ calibration: by, half }: Settling, unit: string): string {
  if (!by || by.half > 0.97 * half) return '';
  const brings = `Calibrating ${by.tap} would bring it to about ${figure(by.half)} ${unit}`;
  return by.settles ? `${brings}, which would settle it.` : `${brings}, which is not enough alone.`;
}
function end({ repeats: count, calibration: by, wantedHalf }: Settling, unit: string): string {
  if (count !== null || by?.settles) return '';
  if (!(wantedHalf > 0)) return 'It stands on its limit: treat it so.';
  return `It must be known to ${figure(wantedHalf)} ${unit} before a verdict falls: treat it as on its limit.`;
}
const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
const figure = (value: number): string => Number(value.toPrecision(2)).toString();
