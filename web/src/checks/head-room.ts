// SPDX-License-Identifier: MIT
// Head-room of a receiver rail: what the pack at rest has above the rail's setting. Without it the rail follows the
// pack and says nothing of its regulator. Pure.
import { reading } from '#core/measurements/tap-reading';
import type { AnalysisInput } from './check.ts';
import type { Stretch } from './stretch.ts';

/** What a regulator of this kind needs, V; from memory. */
const leastV = 0.5;

/** Null where there is enough; a sentence of what was seen where there is not. */
export function headRoomLack(input: AnalysisInput<unknown>, rest: Stretch): string | null {
  const packV = reading(input, 'controllerVoltage', rest).value;
  const settingV = input.car.controller.railSettingV;
  if (packV - settingV >= leastV) return null;
  return `The pack stands at ${packV.toFixed(2)} V and the rail is set to ${settingV.toFixed(1)} V: ${(packV - settingV).toFixed(2)} V of head-room, at least ${leastV} V are needed.`;
}
