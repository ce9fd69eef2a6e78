// SPDX-License-Identifier: MIT
// Offset of a thermistor: in melting ice, or against the other thermistors that lie with it at one temperature.
// Its slope stays as declared. It knows no rig.
import { mean } from 'simple-statistics';
import { rectangular } from '../measurements/tap-errors.ts';
import type { Tap } from '../samples/rig-description.ts';
import { CalibrationRefused } from './calibration-refused.ts';
import type { CalibrationLine, LineLabel } from './line-calibration.ts';

export interface ThermistorReading {
  readonly tap: Tap;
  /** C, without a calibration, and the standard uncertainty of its noise. */
  readonly shownC: number;
  readonly u: number;
}
/** Stirred crushed ice and water, the thermistor held in it: half-width in K (common practice, no source). */
const iceHalfWidthK = 0.2;
/** Thermistors lying together wrapped for ten minutes (common practice, no source). */
const togetherHalfWidthK = 0.15;
/** Further off than this no sound thermistor of the declared tolerance can be, K beyond its declared offset. */
const slackK = 1.5;

/** Melting ice is at 0 C. */
export function iceCalibration(reading: ThermistorReading, label: LineLabel): CalibrationLine {
  return offsetLine(reading, 0, Math.hypot(reading.u, rectangular(iceHalfWidthK)), label);
}
/** Against the mean of all: their differences become small, what they are all off by together stays. */
export function togetherCalibration(
  readings: readonly ThermistorReading[],
  label: LineLabel,
): CalibrationLine[] {
  if (readings.length < 2)
    throw new CalibrationRefused(
      'tooFewPoints',
      'One thermistor alone has nothing to be compared with. Put at least two together, or use the ice point.',
    );
  const [at, count] = [mean(readings.map(({ shownC }) => shownC)), readings.length];
  return readings.map((reading) => {
    const common = rectangular(declaredK(reading.tap, at)) / Math.sqrt(count);
    return offsetLine(reading, at, Math.hypot(reading.u, rectangular(togetherHalfWidthK), common), label);
  });
}
/** Thermistor and pull-up at 25 C, and the B value away from there. */
const declaredK = ({ error }: Tap, atC: number): number => error.offset + error.gain * Math.abs(atC - 25);

function offsetLine({ tap, shownC }: ThermistorReading, trueC: number, u: number, label: LineLabel) {
  const offset = trueC - shownC;
  const most = declaredK(tap, 25) + slackK;
  if (!(Math.abs(offset) <= most))
    throw new CalibrationRefused(
      'implausibleValue',
      `${tap.id} shows ${shownC.toFixed(1)} °C where it should show ${trueC.toFixed(1)} °C; its tolerance allows ${most.toFixed(1)} K. Is it in the bath, and plugged in at its place?`,
    );
  // What the curve is off by away from here is told by the tap's own budget.
  return { tap: tap.id, gain: 1, offset, gainU: 0, offsetU: 2 * u, correlation: 0, ...label };
}
