// SPDX-License-Identifier: MIT
// The bytes in which a rig keeps its store: JSON with one short row a calibration, as the memory holds about 500
// bytes. Rows: place; gain - 1 (1e-6), offset (1e-5 of the unit), U of gain (1e-6), U of offset (1e-5), correlation
// (1e-3), day since 1970-01-01, all whole numbers; origin, or from 10 on the meter's number and its share in one. It
// knows no line to a rig.
import { z } from 'zod';
import { storeSchema, type Descriptor, type Store } from '../samples/rig-description.ts';
import { CalibrationRefused } from './calibration-refused.ts';
import { limitedFeedId } from './limited-feed.ts';
import type { CalibrationLine } from './line-calibration.ts';

/** Bytes in one half of the reference board's memory. */
export const storeRoom = 504;
const msPerDay = 86_400_000;
const firstMuxPlace = 10;
const feedPlace = 90;
const whole = z.int();
const rowSchema = z.tuple([whole, whole, whole, whole, whole, whole, whole, z.union([whole, z.string()])]);
/** Kept as their places in this list; any other origin as its words. */
const origins = ['meter', 'ice', 'together', 'taps'];
/** From here on: this + share in per cent + 101 x number of the meter. */
const meterOrigin = 10;
const shares = 101;
const inGain = 1e6;
const inOffset = 1e5;
const inCorrelation = 1e3;
const formSchema = z.object({
  serial: z.string(),
  name: z.string(),
  calibration: z.array(z.union([rowSchema, z.unknown()])),
});

/** Throws CalibrationRefused when it does not fit. */
export function storeBytes(store: Store, descriptor: Descriptor): Uint8Array {
  const calibration = store.calibration.map((line) => rowOf(line, descriptor));
  const { serial, name } = store;
  const bytes = new TextEncoder().encode(JSON.stringify({ serial, name, calibration }));
  if (bytes.length <= storeRoom) return bytes;
  throw new CalibrationRefused(
    'storeFull',
    `The rig's memory holds ${storeRoom} bytes, this store needs ${bytes.length}. Calibrate fewer taps, or give the rig a shorter name.`,
  );
}
/** Throws when the bytes are not a store. Rows of places that this rig lacks are left out. */
export function storeOf(bytes: Uint8Array, descriptor: Descriptor): Store {
  const form = formSchema.parse(JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)));
  const calibration = form.calibration.flatMap((row) => {
    const short = rowSchema.safeParse(row);
    return short.success ? lineOf(short.data, descriptor) : [row];
  });
  return storeSchema.parse({ ...form, calibration });
}
const places = ({ taps }: Descriptor): [number, string][] => [
  ...taps.map(({ channel, mux, id }): [number, string] => [
    mux === undefined ? channel : firstMuxPlace + mux,
    id,
  ]),
  [feedPlace, limitedFeedId],
];
function rowOf(line: CalibrationLine, descriptor: Descriptor): z.infer<typeof rowSchema> {
  const place = places(descriptor).find(([, id]) => id === line.tap);
  if (!place)
    throw new CalibrationRefused('implausibleValue', `This rig has no tap "${line.tap}" to calibrate.`);
  const { gain, offset, gainU, offsetU, correlation, date } = line;
  const day = Math.floor(Date.parse(date) / msPerDay);
  const from = originCode(line);
  const moved = [(gain - 1) * inGain, offset * inOffset].map(Math.round);
  const us = [Math.ceil(gainU * inGain), Math.ceil(offsetU * inOffset)];
  return [place[0], moved[0], moved[1], us[0], us[1], Math.round(correlation * inCorrelation), day, from];
}
function originCode({ origin, meter }: CalibrationLine): number | string {
  if (meter && origin === 'meter')
    return meterOrigin + Math.round(meter.share * (shares - 1)) + shares * meter.number;
  return origins.includes(origin) ? origins.indexOf(origin) : origin;
}
function originOf(code: number | string): Pick<CalibrationLine, 'origin' | 'meter'> {
  if (typeof code === 'string') return { origin: code };
  if (code < meterOrigin) return { origin: origins[code] ?? 'unknown' };
  const rest = code - meterOrigin;
  const meter = { number: Math.floor(rest / shares), share: (rest % shares) / (shares - 1) };
  return { origin: 'meter', meter };
}
function lineOf(row: z.infer<typeof rowSchema>, descriptor: Descriptor): CalibrationLine[] {
  const [place, gain, offset, gainU, offsetU, correlation, day, origin] = row;
  const tap = places(descriptor).find(([known]) => known === place)?.[1];
  if (tap === undefined) return [];
  const date = new Date(day * msPerDay).toISOString().slice(0, 10);
  return [
    {
      tap,
      gain: 1 + gain / inGain,
      offset: offset / inOffset,
      gainU: gainU / inGain,
      offsetU: offsetU / inOffset,
      correlation: correlation / inCorrelation,
      date,
      ...originOf(origin),
    },
  ];
}
