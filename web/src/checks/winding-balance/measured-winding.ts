// SPDX-License-Identifier: MIT
// From the findings of winding-balance to what the motor's other checks may go by: its own winding resistance in place
// of that of its class.
import type { Finding } from '#core/measurements/measurement';
import type { Proposal } from '../proposal.ts';

/** Null when the mean of the pairs was not measured, or too loosely to help. */
export function proposes(findings: readonly Finding[]): Proposal | null {
  const mean = findings.find(({ id }) => id === 'winding-mean');
  if (!mean?.measured || mean.u >= mean.value / 4) return null;
  const windingOhm = { ohm: Number(mean.value.toPrecision(6)), u: Number(mean.u.toPrecision(3)) };
  return {
    part: 'motor',
    words: `Take ${(1000 * mean.value).toFixed(2)} mΩ at 20 °C for the winding of this motor in its other checks, in place of what its class has.`,
    change: { windingOhm },
  };
}
