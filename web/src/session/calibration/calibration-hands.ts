// SPDX-License-Identifier: MIT
// What a guided calibration asks of a person: hands for a wiring, eyes for a meter. It knows no screen.
import { CalibrationRefused, type RefusalCode } from '#core/calibration/calibration-refused';
import { readingOf, type Meter, type MeterQuantity } from '#core/calibration/meter';

/** What the meter lies across, or in series with. */
export type MeterPlace = 'source' | 'packCurrent' | 'railCurrent' | 'limitedFeed';
/** What comes after the person has done it: nothing is fed, the feed comes on, or a load while it is on. */
export type AfterAct = 'safe' | 'goes live' | 'live';
export interface ActQuestion {
  readonly words: string;
  readonly after: AfterAct;
  /** Whose values tell that it is done right. */
  readonly taps: readonly string[];
}
export interface MeterQuestion {
  readonly words: string;
  readonly quantity: MeterQuantity;
  readonly place: MeterPlace;
  /** What lies where the meter lies. */
  readonly taps: readonly string[];
  /** Why what was entered before can't be used; null for the first time. */
  readonly refused: string | null;
}
export interface CalibrationHands {
  /** Resolves when the person has done what the words say. */
  act(question: ActQuestion): Promise<void>;
  /** The number that the meter shows, as the person enters it. */
  read(question: MeterQuestion): Promise<number>;
}
const triesAtMost = 3;
const worthAskingAgain: readonly RefusalCode[] = ['notANumber', 'rangeExceeded', 'implausiblePoint'];

/** Asks again, with the reason, where what was entered can't be on the meter. What lies far from the taps is taken
 *  when it is entered twice. Throws CalibrationRefused at last. */
export async function readMeter(
  { hands, meter }: { readonly hands: CalibrationHands; readonly meter: Meter },
  question: Omit<MeterQuestion, 'refused'>,
  requireNear: (value: number) => void = () => {},
): Promise<number> {
  let refused: string | null = null;
  let insisted = Number.NaN;
  for (let attempt = 1; ; attempt++) {
    const value = await hands.read({ ...question, refused });
    try {
      readingOf(meter, question.quantity, value);
      if (value !== insisted) requireNear(value);
      return value;
    } catch (error) {
      const again = error instanceof CalibrationRefused && worthAskingAgain.includes(error.code);
      if (!again || attempt === triesAtMost) throw error;
      refused = error.message;
      insisted = value;
    }
  }
}
