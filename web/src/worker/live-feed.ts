// SPDX-License-Identifier: MIT
// Newest value of every tap, rows a second and rows lost, from the stream as it passes. Keeps a few seconds of
// blocks only. It knows no run.
import { outputBitCode } from '#protocol/codes';
import type { RigDescription } from '#core/samples/rig-description';
import type { ScanBlock } from '#core/samples/scan-block';
import { ScanColumns } from '#core/samples/scan-columns';
import type { FromBench } from './messages.ts';

/** Two seconds of blocks: each holds every input of the multiplexer once. */
const blocksKept = 256;
const feedBits = (1 << outputBitCode.feedLimited) | (1 << outputBitCode.feedFull);

export class LiveFeed {
  private columns: ScanColumns;
  private blocks = 0;
  private lost = 0;
  private outputs = 0;
  private toldAtMs: number | null = null;
  private toldBlocks = 0;

  constructor(private readonly rig: RigDescription) {
    this.columns = new ScanColumns(rig);
  }
  push(block: ScanBlock): void {
    if (this.columns.raw.length >= blocksKept) this.renew();
    this.columns.push(block);
    this.blocks += 1;
    this.outputs = block.outputs;
  }
  /** `nowMs` on the session's clock. Null when no block came since the last call. */
  report(nowMs: number): Extract<FromBench, { kind: 'live' }> | null {
    const came = this.blocks - this.toldBlocks;
    if (came === 0) return null;
    const seconds = this.toldAtMs === null ? 0 : (nowMs - this.toldAtMs) / 1000;
    const rowsPerS = seconds > 0 ? (came * this.rig.descriptor.scansPerBlock) / seconds : 0;
    this.toldBlocks = this.blocks;
    this.toldAtMs = nowMs;
    const lostRows = this.lost + this.gapRows();
    return {
      kind: 'live',
      values: this.values(),
      rowsPerS,
      lostRows,
      feedOn: (this.outputs & feedBits) !== 0,
    };
  }
  private values() {
    return this.rig.descriptor.taps.flatMap((tap) => {
      const latest = this.columns.latest(tap.id);
      if (!latest) return [];
      const inside = latest.value >= tap.low && latest.value <= tap.high;
      return [{ tap: tap.id, value: inside ? latest.value : null }];
    });
  }
  private renew(): void {
    this.lost += this.gapRows();
    this.columns = new ScanColumns(this.rig);
  }
  private gapRows(): number {
    return this.columns.gaps.reduce((sum, gap) => sum + gap.scans, 0);
  }
}
