// SPDX-License-Identifier: MIT
// A calibration that can't be right, with the reason and what to do in words. It knows no screen.

export type RefusalCode =
  | 'notANumber'
  | 'noRange'
  | 'rangeExceeded'
  | 'tooFewPoints'
  | 'tooNear'
  | 'swapped'
  | 'notOnALine'
  | 'implausibleGain'
  | 'implausibleOffset'
  | 'implausibleValue'
  | 'tapAtItsEnd'
  | 'implausiblePoint'
  | 'storeFull';
export class CalibrationRefused extends Error {
  override readonly name = 'CalibrationRefused';
  constructor(
    readonly code: RefusalCode,
    words: string,
  ) {
    super(words);
  }
}
