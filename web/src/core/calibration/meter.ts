// SPDX-License-Identifier: MIT
// A hand-held meter as its data sheet tells it: per cent of reading plus counts, by range. What is stated are
// bounds, so each part is a rectangle (JCGM 100:2008, 4.3.7). It knows no rig.
import { z } from 'zod';
import { crc16 } from '#protocol/crc';
import { CalibrationRefused } from './calibration-refused.ts';

export const meterQuantities = ['voltage', 'current', 'resistance', 'temperature'] as const;
export type MeterQuantity = (typeof meterQuantities)[number];
const unitOf: Readonly<Record<MeterQuantity, string>> = {
  voltage: 'V',
  current: 'A',
  resistance: 'ohm',
  temperature: 'C',
};
const rangeSchema = z.strictObject({
  quantity: z.enum(meterQuantities),
  /** Greatest value the range shows, in V, A, ohm or C. */
  upTo: z.number('upTo: a number is needed').positive('upTo must be more than 0'),
  percentOfReading: z
    .number('percentOfReading: a number is needed')
    .min(0, 'percentOfReading must not be negative')
    .max(20, 'a meter that is off by more than 20 % of its reading calibrates nothing'),
  counts: z.number('counts: a number is needed').min(0, 'counts must not be negative'),
  /** One count, in the unit. */
  resolution: z.number('resolution: a number is needed').positive('resolution must be more than 0'),
});
export const meterSchema = z
  .strictObject({
    name: z.string().min(1, 'the meter needs a name'),
    ranges: z.array(rangeSchema).min(1, 'at least one range is needed'),
  })
  .superRefine(({ ranges }, context) =>
    ranges.forEach(({ resolution, upTo }, i) => {
      if (resolution * 100 > upTo)
        context.addIssue({
          code: 'custom',
          path: ['ranges', i, 'resolution'],
          message: `one count of ${resolution} is more than a hundredth of the range ${upTo}`,
        });
    }),
  );
export type Meter = z.infer<typeof meterSchema>;
export type MeterRange = Meter['ranges'][number];

/** A usual hand-held meter of 6000 counts: 0.5 % + 2 counts on volts, 1 % + 3 on the 10 A range (common practice,
 *  no source). It stands in where nobody tells the real one. */
export const usualMeter: Meter = {
  name: 'usual 6000-count meter',
  ranges: [
    { quantity: 'voltage', upTo: 6, percentOfReading: 0.5, counts: 2, resolution: 0.001 },
    { quantity: 'voltage', upTo: 60, percentOfReading: 0.5, counts: 2, resolution: 0.01 },
    { quantity: 'current', upTo: 10, percentOfReading: 1, counts: 3, resolution: 0.01 },
    { quantity: 'resistance', upTo: 600, percentOfReading: 1, counts: 2, resolution: 0.1 },
    { quantity: 'temperature', upTo: 400, percentOfReading: 1, counts: 2, resolution: 1 },
  ],
};
/** One meter's number among a person's few, from its name and ranges: short, as a rig's memory is. */
export const meterNumber = (meter: Meter): number =>
  crc16(new TextEncoder().encode(JSON.stringify(meter))) % meterNumbers;
export const meterNumbers = 989;

/** Standard uncertainties of one reading. */
export interface MeterReading {
  readonly value: number;
  readonly range: MeterRange;
  /** In proportion to the reading, the same for all readings in one range. */
  readonly gainU: number;
  /** The counts: a zero of the range, the same for all its readings. */
  readonly zeroU: number;
  /** Half a count, each reading's own. */
  readonly roundingU: number;
}
const root3 = Math.sqrt(3);

/** Throws CalibrationRefused when the meter can't show the value. */
export function readingOf(meter: Meter, quantity: MeterQuantity, value: number): MeterReading {
  if (!Number.isFinite(value))
    throw new CalibrationRefused('notANumber', `"${value}" is not a number. Enter what the meter shows.`);
  const range = rangeFor(meter, quantity, value);
  return {
    value,
    range,
    gainU: (range.percentOfReading / 100 / root3) * Math.abs(value),
    zeroU: (range.counts * range.resolution) / root3,
    roundingU: range.resolution / 2 / root3,
  };
}
/** The smallest range that shows the value, as a meter that picks its range does. */
function rangeFor({ name, ranges }: Meter, quantity: MeterQuantity, value: number): MeterRange {
  const fit = ranges.filter((range) => range.quantity === quantity).toSorted((a, b) => a.upTo - b.upTo);
  if (fit.length === 0)
    throw new CalibrationRefused(
      'noRange',
      `The meter "${name}" has no range for ${quantity}. Add it to the meter's file, or leave this tap out.`,
    );
  const found = fit.find(({ upTo }) => Math.abs(value) <= upTo);
  const unit = unitOf[quantity];
  if (!found)
    throw new CalibrationRefused(
      'rangeExceeded',
      `${value} ${unit} is beyond the greatest range of the meter "${name}", ${fit.at(-1)?.upTo} ${unit}. Read again, or use a meter with a greater range.`,
    );
  return found;
}
/** Standard uncertainty of one reading, all parts together. */
export const readingU = ({ gainU, zeroU, roundingU }: MeterReading): number =>
  Math.hypot(gainU, zeroU, roundingU);
