// SPDX-License-Identifier: MIT
// What a guided calibration asks of a person: hands for a wiring, eyes for a meter. It knows no screen.
import { CalibrationRefused, type RefusalCode } from '#core/calibration/calibration-refused';
import { readingOf, type Meter, type MeterQuantity } from '#core/calibration/meter';

/** What the meter lies across, or in series with. */
export type MeterPlace = 'source' | 'packCurrent' | 'railCurrent' | 'limitedFeed';
export interface CalibrationHands {
  /** Resolves when the person has done what the words say. */
  act(words: string): Promise<void>;
  /** The number that the meter shows, as the person enters it. */
  read(words: string, place: MeterPlace): Promise<number>;
}
const triesAtMost = 3;
const worthAskingAgain: readonly RefusalCode[] = ['notANumber', 'rangeExceeded'];

/** Asks again, with the reason, where what was entered can't be on the meter. Throws CalibrationRefused at last. */
export async function readMeter(
  { hands, meter }: { readonly hands: CalibrationHands; readonly meter: Meter },
  quantity: MeterQuantity,
  words: string,
  place: MeterPlace,
): Promise<number> {
  let told = words;
  for (let attempt = 1; ; attempt++) {
    const value = await hands.read(told, place);
    try {
      return readingOf(meter, quantity, value).value;
    } catch (error) {
      const again = error instanceof CalibrationRefused && worthAskingAgain.includes(error.code);
      if (!again || attempt === triesAtMost) throw error;
      told = `${error.message} ${words}`;
    }
  }
}
