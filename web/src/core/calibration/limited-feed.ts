// SPDX-License-Identifier: MIT
// The resistor of the limited feed, as it is: the slope of the voltage across the feed over the current through it
// while the capacitor fills, or what a meter shows. The diode in series adds volts, not slope. It knows no rig.
import { uncertain, type Quantity } from '../measurements/quantity.ts';
import { rectangular, typeB } from '../measurements/tap-errors.ts';
import { yorkFit, type LinePoint } from '../measurements/york-fit.ts';
import type { RigDescription } from '../samples/rig-description.ts';
import { CalibrationRefused } from './calibration-refused.ts';
import type { CalibrationLine, LineLabel } from './line-calibration.ts';
import { readingU, type MeterReading } from './meter.ts';

/** How the store names it. */
export const limitedFeedId = 'limitedFeed';
/** Half-width of the resistor's tolerance until it is measured. Common practice, no source. */
const declaredTolerance = 0.05;
/** Beyond this it is another resistor, or a wrong connection. */
const mostOff = 0.3;

export interface FeedResistance {
  readonly ohm: number;
  /** Standard uncertainty. */
  readonly u: number;
  readonly origin: string;
}
/** The calibration where there is one, else what the rig declares. */
export function feedResistance({ descriptor, store }: RigDescription): FeedResistance {
  const declared = descriptor.limitedFeedOhm;
  const kept = store?.calibration.find(({ tap }) => tap === limitedFeedId);
  if (!kept)
    return { ohm: declared, u: rectangular(declaredTolerance * declared), origin: 'rig description' };
  return {
    ohm: kept.gain * declared,
    u: (kept.gainU / 2) * declared,
    origin: `calibration of ${kept.date}`,
  };
}
/** The same for an analysis: ohms with their uncertainty, one error wherever the feed is used. As declared, 10 ohm
 *  within 5 % (common practice, no source). */
export function feedOhm(rig: RigDescription): Quantity {
  const { ohm, u, origin } = feedResistance(rig);
  const shape = origin.startsWith('calibration') ? 'normal' : 'rectangular';
  const source = { ...typeB(limitedFeedId, 'resistor of the limited feed', origin), shape } as const;
  return uncertain(ohm, [[source, u]]);
}
/** Volts across the feed (y) over amperes through it (x). `gainU` is what both taps' gains are off by, relative. */
export function feedFromTaps(
  declaredOhm: number,
  points: readonly LinePoint[],
  gainU: number,
  label: LineLabel,
): CalibrationLine {
  const fit = yorkFit(points);
  if (!fit)
    throw new CalibrationRefused(
      'tooFewPoints',
      'The limited feed filled the capacitor too quickly to tell its resistance. Enter it from the meter.',
    );
  const scatter = Math.max(1, Math.sqrt(fit.chi2 / fit.dof));
  return feedLine(declaredOhm, fit.slope, Math.hypot(fit.uSlope * scatter, fit.slope * gainU), label);
}
export function feedFromMeter(declaredOhm: number, reading: MeterReading, label: LineLabel): CalibrationLine {
  return feedLine(declaredOhm, reading.value, readingU(reading), label);
}
function feedLine(declaredOhm: number, ohm: number, u: number, label: LineLabel): CalibrationLine {
  const gain = ohm / declaredOhm;
  if (!(Math.abs(gain - 1) <= mostOff))
    throw new CalibrationRefused(
      'implausibleValue',
      `The limited feed would have ${ohm.toPrecision(3)} ohm; this rig declares ${declaredOhm} ohm. Check where the meter is connected, with the pack unplugged.`,
    );
  return {
    tap: limitedFeedId,
    gain,
    offset: 0,
    gainU: (2 * u) / declaredOhm,
    offsetU: 0,
    correlation: 0,
    ...label,
  };
}
/** As for taps: only what is better than the declared tolerance is kept. */
export function feedOutcome(declaredOhm: number, line: CalibrationLine) {
  const declaredU = 1.9 * rectangular(declaredTolerance);
  const adopted = line.gainU < declaredU;
  const ohm = (line.gain * declaredOhm).toPrecision(4);
  const figures = `U ${percent(declaredU)} as declared, ${percent(line.gainU)} calibrated`;
  const why = adopted ? 'adopted' : 'not adopted, as it would not make the uncertainty smaller';
  return { adopted, words: `${limitedFeedId}: ${why}: ${ohm} ohm (${figures}).` };
}
const percent = (share: number): string => `${(100 * share).toPrecision(2)} %`;
