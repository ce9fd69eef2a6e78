// SPDX-License-Identifier: MIT
// The arithmetic of the plan view: how wide a wire is drawn for a current, the outline of a tag, the teeth of
// a gear. It knows shapes in view-box units, not parts or values.

export interface WireWidth {
  readonly core: number;
  readonly sleeve: number;
  /** False: nobody knows what flows. */
  readonly known: boolean;
}
/** A wire without current is a hollow sleeve. Width grows with the square root of the current, at most 17; null where
 *  the current is not known. */
export function wireWidth(currentA: number | null): WireWidth {
  const amps = Math.abs(currentA ?? 0);
  const known = currentA !== null;
  if (amps < 0.02) return { core: 0, sleeve: 7, known };
  const core = Math.min(17, 1.6 + 2.35 * Math.sqrt(amps));
  return { core, sleeve: Math.max(5, core + 4.5), known };
}
/** Currents that the key of the cores shows, A. */
export const coreKey = [0.3, 5, 40] as const;
/** Less than this against the current drawn changes nothing, so that a wire doesn't tremble. */
const steadyShare = 0.2;
const steadyA = 0.01;
/** Keeps the current that is drawn. */
export class SteadyCurrent {
  private drawnA: number | null = null;

  next(currentA: number | null): number | null {
    const held =
      this.drawnA !== null &&
      currentA !== null &&
      Math.abs(currentA - this.drawnA) <= Math.max(steadyA, steadyShare * Math.abs(this.drawnA));
    if (!held) this.drawnA = currentA;
    return this.drawnA;
  }
}
/** A 190 x 88 tag at (x, y) with 14 px cut off the two corners beside its hole. */
export function tagOutline(x: number, y: number, hole: 'top' | 'bottom'): string {
  const right = x + 190;
  const low = y + 88;
  if (hole === 'bottom')
    return `M${x + 3} ${y}H${right - 3}Q${right} ${y} ${right} ${y + 3}V${low - 14}L${right - 14} ${low}H${x + 14}L${x} ${low - 14}V${y + 3}Q${x} ${y} ${x + 3} ${y}Z`;
  return `M${x + 14} ${y}H${right - 14}L${right} ${y + 14}V${low - 3}Q${right} ${low} ${right - 3} ${low}H${x + 3}Q${x} ${low} ${x} ${low - 3}V${y + 14}Z`;
}
/** Outline of a gear with square-shouldered teeth around (cx, cy). */
export function gearOutline(cx: number, cy: number, teeth: number, root: number, tip: number): string {
  const points: string[] = [];
  for (let tooth = 0; tooth < teeth; tooth += 1) {
    for (const [shift, radius] of [
      [-0.32, root],
      [-0.16, tip],
      [0.16, tip],
      [0.32, root],
    ] as const) {
      const angle = ((tooth + shift) / teeth) * 2 * Math.PI;
      points.push(
        `${(cx + radius * Math.cos(angle)).toFixed(1)} ${(cy + radius * Math.sin(angle)).toFixed(1)}`,
      );
    }
  }
  return `M${points.join('L')}Z`;
}
