// SPDX-License-Identifier: MIT
// The first opening of the throttle in a live session: by small steps until Hall edges prove that the widths are
// right and the motor turns. The rig demands it; here is how the host does it. It knows fractions, no widths.
import { wire } from '#protocol/codes';
import { RunStopped } from './run-stopped.ts';

/** Just inside the rig's largest step, so that rounding to ticks never breaks it. */
const stepFraction = (wire.firstStepPerCent - 0.2) / 100;
const stepS = 0.06;
/** Below the 15 % from which the rig trips when no edge comes. */
const creepAtMost = 0.14;
const proofWithinS = 1.5;
const edgesProve = 6;

export interface Creeping {
  /** Drives to a fraction at once; may be refused by the rig. */
  drive(fraction: number): Promise<void>;
  wait(seconds: number): Promise<void>;
  waitFor(seen: () => boolean, timeoutS: number): Promise<boolean>;
  /** Captured edges so far. */
  edges(): number;
}
/** True when the motor is proven to turn; false when `wanted` was reached before. */
export async function creepTo(wanted: number, bench: Creeping): Promise<boolean> {
  const before = bench.edges();
  const turns = () => bench.edges() - before >= edgesProve;
  const most = Math.min(wanted, creepAtMost);
  for (let at = stepFraction; ; at = Math.min(most, at + stepFraction)) {
    await bench.drive(Math.min(at, most));
    await bench.wait(stepS);
    if (turns()) return true;
    if (at >= most) break;
  }
  if (wanted <= creepAtMost) return false;
  if (await bench.waitFor(turns, proofWithinS)) return true;
  throw new RunStopped(
    'failed',
    `No Hall edge came at ${Math.round(most * 100)} % throttle. Check the sensor cable, the controller's switch and the throttle widths, then run again.`,
  );
}
