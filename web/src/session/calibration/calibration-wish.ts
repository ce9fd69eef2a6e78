// SPDX-License-Identifier: MIT
// What a person wants calibrated, with what, and who helps. It does nothing.
import type { CalibrationPoint } from '#core/calibration/line-calibration';
import type { Meter } from '#core/calibration/meter';
import type { Progress } from '#checks/check';
import type { Car } from '#core/parts/part';
import type { CalibrationHands } from './calibration-hands.ts';

export interface CalibrationWish {
  /** Tap ids, and `limitedFeed` for its resistor. */
  readonly taps: readonly string[];
  readonly meter: Meter;
  readonly car: Car;
  readonly hands: CalibrationHands;
  /** ISO 8601, the day. */
  readonly today: string;
  /** Thermistors in melting ice, or all together at the temperature of the room. */
  readonly thermistorsIn: 'ice' | 'together';
  /** The resistor of the limited feed by the rig's own taps, or by the meter. */
  readonly feedBy: 'taps' | 'meter';
  /** Each point as it is taken. */
  readonly took?: (tap: string, point: CalibrationPoint) => void;
  readonly progress?: (progress: Progress) => void;
  readonly signal?: AbortSignal;
}
