// SPDX-License-Identifier: MIT
// What the rig says of a trip, in words with the tap, its value and its name. It decides nothing.
import { codeWords, tripCode, tripWords } from '#protocol/codes';
import type { RigDescription, Tap } from '#core/samples/rig-description';
import { tapWords } from '#core/samples/tap-titles';
import { scaled, tapScaling } from '#core/samples/tap-scaling';
import type { AnswerTo } from './command-queue.ts';

export interface TripReport {
  readonly code: number;
  readonly words: string;
  readonly tap: string | null;
  /** In the tap's unit, at the nominal supply; null when no tap had a part in it. */
  readonly value: number | null;
  readonly tick: number;
}
const noTap = 255;

export function tripReport(message: AnswerTo<'state'>, rig: RigDescription): TripReport {
  const { trip: code, tripTap, tripRaw, tripTick: tick } = message;
  const isLine = code === tripCode.noisyLine || tripTap === noTap;
  const tap = isLine ? undefined : tapAt(rig, tripTap);
  const scaling = tap && tapScaling(rig, tap.id);
  const value = scaling ? scaled(scaling, tripRaw, rig.descriptor.nominalSupplyV) : null;
  return { code, words: words(code, tap, value), tap: tap?.id ?? null, value, tick };
}
/** When the report itself got lost and only a block's trip code is there. */
export const bareTrip = (code: number, tick: number): TripReport => ({
  code,
  words: tripWords(code),
  tap: null,
  value: null,
  tick,
});
export const restartReport = (cause: number, tick: number): TripReport => ({
  code: 0,
  words: `The rig restarted by itself: ${codeWords('resetCause', cause)}.`,
  tap: null,
  value: null,
  tick,
});
function tapAt({ descriptor }: RigDescription, place: number): Tap | undefined {
  return descriptor.taps.find((tap) =>
    place < 8 ? tap.channel === place && tap.mux === undefined : tap.mux === place - 8,
  );
}
function words(code: number, tap: Tap | undefined, value: number | null): string {
  if (!tap || value === null || !Number.isFinite(value)) return tripWords(code);
  return `${tripWords(code)} (${tapWords(tap.id)}: ${value.toPrecision(3)} ${tap.unit})`;
}
