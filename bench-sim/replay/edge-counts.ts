// SPDX-License-Identifier: MIT
// Hall edges as a block tells them: running counts, the last captured edge, distances between captured ones.
// Line A stands at the capture input. It knows ticks, no processor.
import type { ScanBlock } from '#core/samples/scan-block';
import type { LineEdge } from './plant-replay.ts';
import { cyclesPerTick } from './run-template.ts';

type Told = Pick<ScanBlock, 'edgesA' | 'edgesB' | 'edgesC' | 'badHall' | 'lastEdge' | 'edges'>;
const farDistance = 65535;

export class EdgeCounts {
  private next = 0;
  private readonly counts = [0, 0, 0];
  private lastTick = Number.NEGATIVE_INFINITY;

  constructor(
    private readonly edges: readonly LineEdge[],
    private readonly tickZero: number,
  ) {}
  /** Takes all edges before a cycle; what a block that ends there would tell of them. */
  until(cycle: number): Told {
    const distances: number[] = [];
    for (; this.next < this.edges.length && this.edges[this.next].cycle < cycle; this.next++) {
      const { line, cycle: at } = this.edges[this.next];
      this.counts[line]++;
      if (line === 0) distances.push(this.distanceTo(at));
    }
    const [a, b, c] = this.counts;
    const lastEdge = Number.isFinite(this.lastTick) ? this.lastTick >>> 0 : 0;
    return {
      edgesA: a & 0xffff,
      edgesB: b & 0xff,
      edgesC: c & 0xff,
      badHall: 0,
      lastEdge,
      edges: distances,
    };
  }
  private distanceTo(cycle: number): number {
    const tick = Math.floor((cycle - this.tickZero) / cyclesPerTick);
    const distance = Math.min(farDistance, tick - this.lastTick);
    this.lastTick = tick;
    return distance;
  }
}
