// SPDX-License-Identifier: MIT
// Every check the bench knows, in the order they are offered.
import type { Check } from './check.ts';
import { firstPower } from './first-power/check.ts';
import { failsafe } from './failsafe/check.ts';
import { gearMesh } from './gear-mesh/check.ts';
import { motorCoastdown } from './motor-coastdown/check.ts';
import { jointDrop } from './joint-drop/check.ts';
import { motorHeat } from './motor-heat/check.ts';
import { motorNoLoad } from './motor-no-load/check.ts';
import { radioRange } from './radio-range/check.ts';
import { railRipple } from './rail-ripple/check.ts';
import { railSag } from './rail-sag/check.ts';
import { packRipple } from './pack-ripple/check.ts';
import { packSag } from './pack-sag/check.ts';
import { railSetting } from './rail-setting/check.ts';
import { restVoltage } from './rest-voltage/check.ts';
import { sensorCable } from './sensor-cable/check.ts';
import { servoCentre } from './servo-centre/check.ts';
import { servoNoLoad } from './servo-no-load/check.ts';
import { servoSpeed } from './servo-speed/check.ts';
import { servoIdle } from './servo-idle/check.ts';
import { servoEndPoints } from './servo-end-points/check.ts';
import { servoHeat } from './servo-heat/check.ts';
import { servoScrub } from './servo-scrub/check.ts';
import { servoStall } from './servo-stall/check.ts';
import { windingBalance } from './winding-balance/check.ts';
import { throttleRange } from './throttle-range/check.ts';
import { timingSweep } from './timing-sweep/check.ts';

export const checks: readonly Check[] = [
  restVoltage,
  firstPower,
  packSag,
  railSetting,
  railSag,
  railRipple,
  packRipple,
  servoCentre,
  servoIdle,
  servoNoLoad,
  servoSpeed,
  servoStall,
  servoEndPoints,
  servoScrub,
  servoHeat,
  sensorCable,
  motorNoLoad,
  motorCoastdown,
  timingSweep,
  motorHeat,
  gearMesh,
  radioRange,
  failsafe,
  throttleRange,
  jointDrop,
  windingBalance,
] as readonly Check[];
export const checkById = (id: string): Check | undefined => checks.find((check) => check.id === id);
