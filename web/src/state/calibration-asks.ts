// SPDX-License-Identifier: MIT
// What a guided calibration asks and how a tap ends in it, as screens show them.
export type { CalibrationAsk, TapOutcome } from '../worker/calibration-messages.ts';
