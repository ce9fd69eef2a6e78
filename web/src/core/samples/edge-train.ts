// SPDX-License-Identifier: MIT
// Times of captured Hall edges, rebuilt backwards from the last edge of each block. It knows ticks only.
import { GrowingColumn } from './growing-column.ts';
import type { ScanBlock } from './scan-block.ts';

/** A distance of this size says "that or more": what lies before it can't be placed. */
const farDistance = 65535;

export class EdgeTrain {
  private readonly ticks = new GrowingColumn(Float64Array);
  private lastTick = Number.NaN;

  /** `sinceFirst` is the unwrapped tick of the block's first conversion. */
  push(block: ScanBlock, sinceFirst: number): void {
    const last = sinceFirst + ((block.lastEdge - block.tick) | 0);
    const found: number[] = [];
    let at = last;
    for (let i = block.edges.length - 1; i >= 0 && at > this.newest(); i--) {
      found.push(at);
      at = block.edges[i] >= farDistance ? Number.NEGATIVE_INFINITY : at - block.edges[i];
    }
    this.ticks.append(found.toReversed());
    if (block.edgesA > 0 || block.edges.length > 0) this.lastTick = last;
  }
  /** Unwrapped tick of the last captured edge, NaN before the first. */
  get last(): number {
    return this.lastTick;
  }
  get all(): Float64Array {
    return this.ticks.view();
  }
  private newest(): number {
    return this.ticks.length ? this.ticks.at(this.ticks.length - 1) : Number.NEGATIVE_INFINITY;
  }
}
