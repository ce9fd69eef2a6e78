// SPDX-License-Identifier: MIT
// A meter's specification as a form of texts, read back by the meter's own schema. Each thing wrong is told beside its
// field. Pure.
import { meterQuantities, meterSchema, type Meter, type MeterQuantity } from '#core/calibration/meter';
import { figure } from './figures.ts';

export interface RangeText {
  readonly quantity: MeterQuantity;
  readonly upTo: string;
  readonly percentOfReading: string;
  readonly counts: string;
  readonly resolution: string;
}
export interface MeterText {
  readonly name: string;
  readonly ranges: readonly RangeText[];
}
export type MeterRead =
  | { readonly ok: true; readonly meter: Meter }
  /** By place: "name", "ranges.0.counts". */
  | { readonly ok: false; readonly errors: Readonly<Record<string, string>> };

export const rangeFields = ['upTo', 'percentOfReading', 'counts', 'resolution'] as const;
export const quantityTitles: Readonly<
  Record<MeterQuantity, { readonly title: string; readonly unit: string }>
> = {
  voltage: { title: 'Volts', unit: 'V' },
  current: { title: 'Amperes', unit: 'A' },
  resistance: { title: 'Ohms', unit: 'Ω' },
  temperature: { title: 'Temperature', unit: '°C' },
};
export const meterText = ({ name, ranges }: Meter): MeterText => ({
  name,
  ranges: ranges.map(({ quantity, ...numbers }) => ({
    quantity,
    ...(Object.fromEntries(rangeFields.map((field) => [field, String(numbers[field])])) as Omit<
      RangeText,
      'quantity'
    >),
  })),
});
const numberOf = (text: string): number =>
  text.trim() === '' ? Number.NaN : Number(text.trim().replace(',', '.'));

export function readMeterText({ name, ranges }: MeterText): MeterRead {
  const given = {
    name: name.trim(),
    ranges: ranges.map((range) => ({
      quantity: range.quantity,
      ...Object.fromEntries(rangeFields.map((field) => [field, numberOf(range[field])])),
    })),
  };
  const read = meterSchema.safeParse(given);
  if (read.success) return { ok: true, meter: read.data };
  return {
    ok: false,
    errors: Object.fromEntries(read.error.issues.map(({ path, message }) => [path.join('.'), message])),
  };
}
/** One more range of the kind of the last, its figures still to be typed. */
export function withRange({ name, ranges }: MeterText): MeterText {
  const quantity = ranges.at(-1)?.quantity ?? meterQuantities[0];
  const blank = { quantity, upTo: '', percentOfReading: '', counts: '', resolution: '' };
  return { name, ranges: [...ranges, blank] };
}
/** "0.5 % + 2 counts of 0.01 up to 60 V". */
export function rangeWords(range: Meter['ranges'][number]): string {
  const { unit } = quantityTitles[range.quantity];
  const plain = (value: number) => figure(value, (String(value).split('.')[1] ?? '').length);
  return `${plain(range.percentOfReading)}\u00a0% + ${plain(range.counts)} counts of ${plain(range.resolution)}, up to ${plain(range.upTo)}\u00a0${unit}`;
}
/** What a person typed as the meter's reading; NaN where it is no plain number. */
export function typedReading(text: string): number {
  const plain = text.trim().replace('\u2212', '-').replace(',', '.');
  return /^[+-]?\d+(\.\d+)?$/.test(plain) ? Number(plain) : Number.NaN;
}
