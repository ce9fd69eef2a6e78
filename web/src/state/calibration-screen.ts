// SPDX-License-Identifier: MIT
// What the screen of one calibration point says, from what is asked and what is seen, in the meter's units whatever a
// person chose to see results in. Pure words; decides nothing.
import type { Tap } from '#core/samples/rig-description';
import { tapTitle, tapWords } from '#core/samples/tap-titles';
import { usualWish } from '#core/units/shown-unit';
import type { CalibrationAsk, TapOutcome } from '../worker/calibration-messages.ts';
import { liveFigure } from './figures.ts';
import { quantityTitles } from './meter-form.ts';
import { steadyWords, type SteadyReading } from './steady-reading.ts';
import { plusMinus } from './tap-calibration.ts';

export interface RigValue {
  readonly tap: string;
  readonly title: string;
  readonly value: string;
  readonly unit: string;
  readonly steady: string;
}
export function rigValue(tap: Tap, reading: SteadyReading): RigValue {
  const [value, unit] =
    reading.value === null
      ? ['\u2013', tap.unit]
      : liveFigure(reading.value, tap.unit, usualWish).split('\u00a0');
  return { tap: tap.id, title: tapTitle(tap.id), value, unit, steady: steadyWords(reading) };
}
/** "Calibrate rail voltage", "Calibrate 3 taps". */
export function calibrateTitle(taps: readonly string[]): string {
  if (taps.length === 0) return 'Calibrate the rig';
  return taps.length === 1 ? `Calibrate ${tapWords(taps[0])}` : `Calibrate ${taps.length} taps`;
}
/** Points of a tap taken so far: "point 2". The zero of a current counts as one. */
export const pointWords = (taken: number): string => (taken === 0 ? 'first point' : `point ${taken + 1}`);

export const meterUnit = (ask: Extract<CalibrationAsk, { kind: 'read' }>): string =>
  quantityTitles[ask.quantity].unit;
/** What the button says when a hand has been asked for. */
export const doneWords: Readonly<Record<'safe' | 'live', string>> = {
  safe: 'It is set, go on',
  live: 'Go on',
};
/** Affirmed anew each time before the feed comes on. */
export const calibrationCautions = [
  'The pack stands on a surface that cannot burn, off its charger, and I stay beside it: lithium packs burn when shorted, reversed or punctured.',
  'Motor and servo are unplugged, and nothing can turn.',
  'I keep off the load resistors: they are hot for minutes afterwards.',
  'After this I put the meter’s lead back from the 10 A socket before I measure volts: across a pack it is a short there (common practice, no source).',
] as const;

const endings: Readonly<Record<TapOutcome['state'], string>> = {
  adopted: 'Adopted',
  'not adopted': 'Not adopted',
  refused: 'Refused',
  'not reached': 'Not reached',
};
export const endingWords = (state: TapOutcome['state']): string => endings[state];
/** The reason without the tap's own name in front, as it stands under that name; without the figures that stand in the
 *  table of tightness beside it, and empty where "Adopted" says it all. */
export function outcomeReason({ tap, state, words, tightness }: TapOutcome): string {
  const own = [tap, tapWords(tap)].find((name) => words.startsWith(`${name}: `));
  const reason = own ? words.slice(own.length + 2) : words;
  const bare = tightness.length > 0 ? reason.replace(/ \(U .*?\)\./, '.') : reason;
  const told = state === 'adopted' && tightness.length > 0 ? bare.replace(/^adopted\. ?/, '') : bare;
  return told.charAt(0).toUpperCase() + told.slice(1);
}
export interface TightnessRow {
  readonly at: string;
  readonly declared: string;
  readonly calibrated: string;
  /** Of the declared U, 0 to 100. */
  readonly left: number;
}
export function tightnessRows({ tightness }: TapOutcome, unit: string): TightnessRow[] {
  return tightness.map(({ at, declaredU, calibratedU }) => ({
    at: liveFigure(at, unit, usualWish),
    declared: plusMinus(declaredU, unit),
    calibrated: plusMinus(calibratedU, unit),
    left: Math.round((100 * calibratedU) / declaredU),
  }));
}
