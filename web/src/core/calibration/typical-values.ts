// SPDX-License-Identifier: MIT
// Values at which a tap is mostly read in a check: there a calibration has to bring something. It knows names of
// taps only.
import type { Tap } from '../samples/rig-description.ts';

const known: Readonly<Record<string, readonly number[]>> = {
  packVoltage: [7.6],
  controllerVoltage: [7.6],
  railVoltage: [6, 7.4],
  midCell: [3.8],
  packCurrentNarrow: [2, 4, 8],
  packCurrentWide: [20],
  railCurrent: [0.2, 2, 5],
};
/** In the tap's unit, rising. Half of the range where a tap is not known by name. */
export const typicalValues = (tap: Tap): readonly number[] =>
  tap.quantity === 'temperature' ? [25, 65] : (known[tap.id] ?? [tap.high / 2]);
