// SPDX-License-Identifier: MIT
// What a calibration is worth as it gets old, and what a person is told of old and missing ones. It knows dates as
// text only; what day it is comes from outside.
import type { Descriptor, Store } from '../samples/rig-description.ts';
import type { CalibrationLine } from './line-calibration.ts';

const msPerDay = 86_400_000;
/** Older than a year, and with each year more, U grows by half of itself. Common practice, no source. */
export const oldAfterDays = 365;
const growthPerYear = 0.5;

export const ageDays = ({ date }: Pick<CalibrationLine, 'date'>, today: string): number =>
  (Date.parse(today) - Date.parse(date)) / msPerDay;
export const isOld = (line: CalibrationLine, today: string): boolean =>
  !(ageDays(line, today) <= oldAfterDays);

/** As the rig keeps it, with the old ones widened; a date that can't be read counts as one year over. */
export function agedStore(store: Store, today: string): Store {
  return { ...store, calibration: store.calibration.map((line) => aged(line, today)) };
}
function aged(line: CalibrationLine, today: string): CalibrationLine {
  if (!isOld(line, today)) return line;
  const days = ageDays(line, today);
  const years = Number.isFinite(days) ? Math.ceil(days / oldAfterDays) - 1 : 1;
  const factor = 1 + growthPerYear * years;
  return {
    ...line,
    gainU: line.gainU * factor,
    offsetU: line.offsetU * factor,
    origin: `${line.origin}, old: U x ${factor}`,
  };
}
/** Sentences of old calibrations as the rig keeps them. */
export const oldNotes = (store: Store, today: string): string[] =>
  store.calibration.filter((line) => isOld(line, today)).map(oldSentence);
/** The same for one that counts as old already. */
export const oldWords = (line: CalibrationLine): string[] =>
  line.origin.includes(', old: ') ? [oldSentence(line)] : [];
const oldSentence = ({ tap, date }: CalibrationLine): string =>
  `The calibration of ${tap} of ${date} is older than a year, so its uncertainty counts wider (common practice, no source). Calibrate it again.`;

/** One sentence of the linear taps without a calibration, or none. */
export function missingNote({ taps }: Descriptor, store: Store | null, used: readonly string[]): string[] {
  const missing = taps.filter(
    ({ id, scale }) =>
      scale.kind === 'linear' && used.includes(id) && !store?.calibration.some(({ tap }) => tap === id),
  );
  return missingWords(missing.map(({ id }) => id));
}
export const missingWords = (taps: readonly string[]): string[] =>
  taps.length === 0
    ? []
    : [`Not calibrated: ${taps.join(', ')}. The declared tolerances of the rig count, which are wider.`];
