// SPDX-License-Identifier: MIT
// What to set at the radio, and what that trades: degrees given up for a servo that never pushes against its stop.
import type { RadioWidths } from './radio-widths.ts';

/** The proposed setting stays this far inside the stop: what the search may be off by, and play. */
export const marginUs = 16;

/** One sentence; whole per cent, rounded inward. */
export function proposal(
  hand: 'left' | 'right',
  percent: number,
  radio: RadioWidths,
  degreesPerUs: number,
): string {
  const perPercentUs = Math.abs(radio[hand].value - radio.centre.value) / 100;
  const setting = Math.max(0, Math.floor(percent - marginUs / perPercentUs));
  const givenUp = (percent - setting) * perPercentUs * degreesPerUs;
  const says = setting > 100 ? `${setting} % (if the radio goes beyond 100 %)` : `${setting} %`;
  return `Set ${hand} to ${says}: ${givenUp.toFixed(1)} degrees at the horn given up for a servo that rests at full lock.`;
}
