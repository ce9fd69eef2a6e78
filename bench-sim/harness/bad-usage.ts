// SPDX-License-Identifier: MIT
// What a person got wrong on the command line or in a file they gave, with what to do. It is never the rig's fault.

export type BadUsageCode =
  | 'badFlag'
  | 'unknownCheck'
  | 'unknownFault'
  | 'badCar'
  | 'badMeter'
  | 'badStudy'
  | 'unknownTap'
  | 'badFile'
  | 'badSeed'
  | 'badFirmware'
  | 'handsNeeded';
export class BadUsage extends Error {
  override readonly name = 'BadUsage';
  constructor(
    readonly code: BadUsageCode,
    words: string,
    options?: { cause?: unknown },
  ) {
    super(words, options);
  }
}
