// SPDX-License-Identifier: MIT
// Every check the bench knows, in the order they are offered.
import type { Check } from './check.ts';
import { firstPower } from './first-power/check.ts';
import { failsafe } from './failsafe/check.ts';
import { motorCoastdown } from './motor-coastdown/check.ts';
import { motorNoLoad } from './motor-no-load/check.ts';
import { radioRange } from './radio-range/check.ts';
import { railSag } from './rail-sag/check.ts';
import { restVoltage } from './rest-voltage/check.ts';
import { sensorCable } from './sensor-cable/check.ts';
import { servoEndPoints } from './servo-end-points/check.ts';
import { servoStall } from './servo-stall/check.ts';

export const checks: readonly Check[] = [
  restVoltage,
  firstPower,
  railSag,
  servoStall,
  servoEndPoints,
  sensorCable,
  motorNoLoad,
  motorCoastdown,
  radioRange,
  failsafe,
] as readonly Check[];
export const checkById = (id: string): Check | undefined => checks.find((check) => check.id === id);
