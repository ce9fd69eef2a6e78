// SPDX-License-Identifier: MIT
// What a check needs against what a rig has, and the sentence for what is missing. It knows names only.
import type { Needs } from './check.ts';
import type { RigDescription } from '#core/samples/rig-description';

/** Null when the rig can serve the check. */
export function missingOf({ taps, outputs }: Needs, { descriptor }: RigDescription): string | null {
  const noTap = taps.filter((id) => !descriptor.taps.some((tap) => tap.id === id));
  const noOutput = outputs.filter((id) => !descriptor.outputs.some((output) => output.id === id));
  if (noTap.length + noOutput.length === 0) return null;
  const lacks = [...noTap.map((id) => `the tap ${id}`), ...noOutput.map((id) => `the output ${id}`)];
  return `The rig "${descriptor.board}" lacks ${lacks.join(' and ')}. Use a rig that has it.`;
}
