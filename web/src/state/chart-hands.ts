// SPDX-License-Identifier: MIT
// Fingers and mouse on a chart, as shares of its width: one drags the picture or, while measuring, brushes; two pinch;
// a tap while measuring puts the nearer edge there. It knows no event and no pixel.
import { nearestEdge } from './chart-brush.ts';
import type { ChartView } from './chart-view.svelte.ts';
import { secondAt, spanOf, type ChartRange } from './chart-window.ts';

interface Finger {
  readonly id: number;
  readonly startShare: number;
  share: number;
}
/** A hand that moved less than this share of the width has tapped. */
const tapShare = 0.008;

export class ChartHands {
  #fingers: Finger[] = [];
  /** What was shown when the last finger came or went. */
  #range: ChartRange | null = null;
  #brushing = false;
  #moved = false;

  constructor(private readonly view: ChartView) {}

  /** `brushing`: as if measuring were on. */
  down(id: number, share: number, brushing = false): void {
    this.#fingers.push({ id, startShare: share, share });
    const alone = this.#fingers.length === 1;
    this.#moved &&= !alone;
    this.#brushing = alone && (brushing || this.view.brush !== null);
    this.#begin();
  }
  move(id: number, share: number): void {
    const finger = this.#fingers.find((each) => each.id === id);
    if (!finger || !this.#range) return;
    finger.share = share;
    this.#moved ||= this.#fingers.length > 1 || Math.abs(share - finger.startShare) > tapShare;
    if (!this.#moved) return;
    if (this.#fingers.length > 1) this.#pinch(this.#range);
    else if (this.#brushing) this.view.brushFromTo(this.#second(finger.startShare), this.#second(share));
    else this.#drag(this.#range, finger);
  }
  up(id: number): void {
    const finger = this.#fingers.find((each) => each.id === id);
    if (finger && !this.#moved && this.#brushing) this.#tap(this.#second(finger.share));
    this.#fingers = this.#fingers.filter((each) => each.id !== id);
    this.#begin();
  }
  /** The browser took the fingers away: nothing was meant. */
  cancel(): void {
    this.#fingers = [];
  }
  /** From here on every finger counts from where it lies. */
  #begin(): void {
    this.#range = this.view.range;
    this.#fingers = this.#fingers.map(({ id, share, startShare }) => ({
      id,
      share,
      startShare: this.#moved || this.#fingers.length > 1 ? share : startShare,
    }));
  }
  #second(share: number): number {
    return secondAt(this.#range ?? this.view.range, share);
  }
  #drag(range: ChartRange, { startShare, share }: Finger): void {
    const byS = (startShare - share) * spanOf(range);
    this.view.show({ fromS: range.fromS + byS, toS: range.toS + byS });
  }
  #pinch(range: ChartRange): void {
    const [a, b] = this.#fingers;
    this.view.pinch(range, [a.startShare, b.startShare], [a.share, b.share]);
  }
  #tap(atS: number): void {
    if (this.view.brush) this.view.moveEdge(nearestEdge(this.view.brush, atS), atS);
  }
}
/** Factor of a wheel's turn; the mode is 0 for pixels, 1 for lines, 2 for pages. */
export function wheelFactor(delta: number, mode: number): number {
  const pixels = delta * (mode === 0 ? 1 : mode === 1 ? 16 : 400);
  return Math.exp(Math.max(-240, Math.min(240, pixels)) * 0.003);
}
