// SPDX-License-Identifier: MIT
// Where a stop begins, from the holding currents about it. A servo drives in proportion to how far it is kept from
// its target, so its current grows with the square of it: sqrt(I - I0) = s (w - w0) beyond the stop, 0 inside. All
// pairs of w0 and s that the points do not contradict have their say; s is known from servos at large. Numbers only.

export interface KneePoint {
  /** Pulse width from the centre outward, us. */
  readonly outUs: number;
  /** Current above the free level, A. */
  readonly risenA: number;
}
export interface Knee {
  readonly outUs: number;
  /** Standard deviation, us. */
  readonly u: number;
}
/** Root amperes per us: full drive within 3 to 6.5 degrees at 2 to 4.5 A, and a stop that gives one to three degrees
 *  under it; middle and spread of the logarithm. From memory of such servos. */
const steepness = { middle: 0.026, spread: 0.3 } as const;
/** Of root amperes: friction lets a servo draw by fits and starts while it moves, pressed against a stop it is steady. */
const scatter = { free: 0.14, pressed: 0.06 } as const;
const stepUs = 0.5;
const reachUs = { inward: 48, outward: 4 } as const;

/** How far friction lets a servo stand short of its target that draws `freeA` above its rest while it moves, us. */
export const lagUs = (freeA: number): number => Math.sqrt(Math.max(0, freeA)) / steepness.middle;

/** `freeA`: what the servo draws above its rest while it moves freely. */
export function kneeOf(points: readonly KneePoint[], freeA: number): Knee {
  const outermostUs = Math.max(...points.map(({ outUs }) => outUs));
  let [weight, sum, squares] = [0, 0, 0];
  for (let w0 = outermostUs - reachUs.inward; w0 <= outermostUs + reachUs.outward; w0 += stepUs) {
    const likely = likelihood(points, w0, freeA);
    weight += likely;
    sum += likely * w0;
    squares += likely * w0 * w0;
  }
  const outUs = sum / weight;
  return { outUs, u: Math.sqrt(Math.max(0, squares / weight - outUs * outUs)) };
}
/** Of one place of the stop, over all steepnesses. */
function likelihood(points: readonly KneePoint[], w0: number, freeA: number): number {
  let likely = 0;
  for (let z = -2.5; z <= 2.5; z += 0.25) {
    const s = steepness.middle * Math.exp(steepness.spread * z);
    const misfit = points.reduce((all, point) => all + missed(point, w0, s, freeA), z * z);
    likely += Math.exp(-misfit / 2);
  }
  return likely;
}
function missed({ outUs, risenA }: KneePoint, w0: number, s: number, freeA: number): number {
  const [free, pressed] = [Math.sqrt(Math.max(0, freeA)), s * Math.max(0, outUs - w0)];
  const wide = pressed > free ? scatter.pressed : scatter.free;
  return ((Math.sqrt(Math.max(0, risenA)) - Math.max(free, pressed)) / wide) ** 2 + 2 * Math.log(wide);
}
