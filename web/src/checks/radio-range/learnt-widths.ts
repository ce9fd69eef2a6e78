// SPDX-License-Identifier: MIT
// From the findings of radio-range to the throttle widths that the rig drives with. The rig drives by its own clock,
// so the widths go back into its own microseconds: its clock's error falls out.
import type { Finding } from '#core/measurements/measurement';
import type { Controller } from '#core/parts/part';
import type { ClockFit } from '#core/samples/sample-store';
import type { Proposal } from '../proposal.ts';

type Widths = Controller['throttle'];
/** What the rig can drive, us. */
const least = 800;
const most = 2200;

/** Null when a width was not measured, the channel is reversed, or the rig can't drive so far. */
export function learntThrottle(findings: readonly Finding[], clock: ClockFit): Widths | null {
  const rigUs = (id: string): number => {
    const found = findings.find((finding) => finding.id === id);
    return found?.measured ? Math.round((2 * found.value) / clock.ratio) / 2 : Number.NaN;
  };
  const lowUs = rigUs('throttle-brake');
  const neutralUs = rigUs('throttle-neutral');
  const highUs = rigUs('throttle-full');
  const usable = least <= lowUs && lowUs < neutralUs && neutralUs < highUs && highUs <= most;
  return usable ? { lowUs, neutralUs, highUs } : null;
}
export function proposes(findings: readonly Finding[], clock: ClockFit): Proposal | null {
  const throttle = learntThrottle(findings, clock);
  if (!throttle) return null;
  const { lowUs, neutralUs, highUs } = throttle;
  return {
    part: 'controller',
    words: `Drive the throttle with what this radio gives: full brake ${lowUs} µs, neutral ${neutralUs} µs, full throttle ${highUs} µs.`,
    change: { throttle },
  };
}
