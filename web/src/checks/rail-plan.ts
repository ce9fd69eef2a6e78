// SPDX-License-Identifier: MIT
// What checks of the receiver rail and the servo on it scan: the rail's two taps, and the controller's side.
import type { ScanPlan } from './check.ts';

export const railPlan: ScanPlan = {
  fast: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'],
  slow: 'multiplexer',
};
/** Pulse at which the steering stands straight, us. */
export const centreUs = 1500;
