// SPDX-License-Identifier: MIT
// From the tap names of a check to converter inputs, and the scan plans the session itself needs. It knows the
// rig's description only.
import type { ScanPlan } from '#checks/check';
import type { RigDescription } from '#core/samples/rig-description';
import { RunStopped } from './run-stopped.ts';

const multiplexer = 7;

export function channelOf({ descriptor }: RigDescription, id: string): number {
  const tap = descriptor.taps.find((known) => known.id === id);
  if (!tap) throw new RunStopped('failed', `This rig has no tap "${id}". Use a rig that has it.`);
  return tap.channel;
}
export function scanListOf(rig: RigDescription, { fast, slow }: ScanPlan) {
  return {
    fast: fast.map((id) => channelOf(rig, id)),
    slow: slow === 'multiplexer' ? multiplexer : channelOf(rig, slow),
  };
}
/** Every current tap, so that each has its zero before anything can flow. */
export function zeroPlan({ descriptor }: RigDescription): ScanPlan {
  const currents = descriptor.taps.filter(({ quantity }) => quantity === 'current').map(({ id }) => id);
  const fast = [...currents, ...powerPlan.fast].slice(0, 4);
  return { fast: [fast[0], fast[1], fast[2], fast[3]], slow: 'multiplexer' };
}
/** What the rig itself wants to see while the feed closes and the rail comes up. */
export const powerPlan: ScanPlan = {
  fast: ['packVoltage', 'controllerVoltage', 'railVoltage', 'packCurrentWide'],
  slow: 'multiplexer',
};
