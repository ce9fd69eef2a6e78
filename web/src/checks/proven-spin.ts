// SPDX-License-Identifier: MIT
// What comes before any wide throttle: a small opening, grown where the motor turns slowly, then the fail-safe test; and
// the sentence why a run must not go on. It measures nothing.
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { SampleStore } from '#core/samples/sample-store';
import { z } from 'zod';
import type { Bench } from './check.ts';

/** Per cent. The rig allows 30 until the fail-safe test is passed, and trips above 15 where no Hall edge comes. */
const openings = { first: 12, step: 2, blind: 14, most: 30 } as const;
/** In half a second: 20 ms from edge to edge, where the rig calls 30 ms a motor that does not turn. */
const briskEdges = 25;
/** Longest time a controller may take to notice that the pulses stopped, s. */
export const failSafeMaxS = 0.5;

export const provenSchema = z.object({
  /** False when the motor did not turn fast enough for the fail-safe test however far the throttle was opened. */
  turned: z.boolean(),
  /** How far it was opened for that, 0 to 1; records from before it grew lack it. */
  opening: z.number().optional(),
  /** Seconds from the end of the pulses until the speed fell; null when it did not fall. */
  failSafeS: z.number().nullable(),
});
export type Proven = z.infer<typeof provenSchema>;

export async function provenSpin(bench: Bench): Promise<Proven> {
  const opened = await openUntilTurning(bench);
  if (!opened.turned) return { ...opened, failSafeS: null };
  await bench.wait(0.8);
  return { ...opened, failSafeS: await bench.failSafeTest(0.7) };
}
export const mayOpen = ({ turned, failSafeS }: Proven): boolean =>
  turned && failSafeS !== null && failSafeS <= failSafeMaxS;

/** Opens by steps until the motor turns fast enough to be seen slowing. */
async function openUntilTurning(bench: Bench): Promise<Pick<Proven, 'turned' | 'opening'>> {
  for (let perCent = openings.first; ; perCent += openings.step) {
    const opening = perCent / 100;
    await bench.throttle(opening, 0.3);
    if (await bench.waitFor((samples) => edgesLately(samples, bench.now()) >= briskEdges, 1.2))
      return { turned: true, opening };
    const seen = edgesLately(bench.samples, bench.now()) > 0;
    if (perCent + openings.step > (seen ? openings.most : openings.blind)) return { turned: false, opening };
  }
}
const edgesLately = (samples: SampleStore, nowS: number): number => samples.edges(nowS - 0.5, nowS).length;
/** Throws NotMeasurable with the reason in words. */
export function requireProven({ turned, opening = 0, failSafeS }: Proven): void {
  if (!turned) throw new NotMeasurable(notTurned(opening));
  if (failSafeS === null || failSafeS > failSafeMaxS)
    throw new NotMeasurable(
      `The controller drove on for ${failSafeS === null ? 'longer than the test' : `${failSafeS.toFixed(2)} s`} after the pulses stopped, so full throttle is not safe. Look at its fail-safe setting, then run again.`,
    );
}
function notTurned(opening: number): string {
  if (opening < 0.295)
    return 'Too few Hall edges came although the throttle was opened. Check the sensor cable, then run again.';
  const perCent = Math.round(opening * 100);
  return `The motor turned too slowly at ${perCent} % throttle, the most that is allowed before the fail-safe test. Check that it turns freely and that the throttle widths are those of its controller, then run again.`;
}
