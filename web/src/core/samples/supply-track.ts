// SPDX-License-Identifier: MIT
// The converter's supply over time, from its readings of the external reference. The supply of a board on USB
// is some per cent off and wanders with load, so every volt is read against the readings near it.
import { GrowingColumn } from './growing-column.ts';
import type { SupplyReading } from './sample-store.ts';
import { codesPerSpan } from './tap-scaling.ts';

/** Blocks on either side that are averaged: about half a second, so that noise of a code falls to 0.01 %. */
const reach = 66;

export class SupplyTrack {
  private readonly sum = new GrowingColumn(Float64Array);
  private readonly squares = new GrowingColumn(Float64Array);
  private readonly count = new GrowingColumn(Float64Array);
  constructor(
    private readonly referenceV: number,
    private readonly nominalV: number,
  ) {
    for (const column of [this.sum, this.squares, this.count]) column.push(0);
  }
  /** Once a block: the reference's code, or null when it was not scanned. */
  push(code: number | null): void {
    const last = this.sum.length - 1;
    const centred = code === null ? 0 : code - codesPerSpan / 2;
    this.sum.push(this.sum.at(last) + centred);
    this.squares.push(this.squares.at(last) + centred * centred);
    this.count.push(this.count.at(last) + (code === null ? 0 : 1));
  }
  /** Volts near block `index`; without any reading there, those of the whole run, at last the nominal. */
  near(index: number): number {
    return this.over(index - reach, index + reach + 1).volts;
  }
  /** Over blocks `from` to before `to`. */
  over(from: number, to: number): SupplyReading {
    const last = this.sum.length - 1;
    const low = Math.max(0, Math.min(from, last));
    const high = Math.max(low, Math.min(to, last));
    const readings = this.count.at(high) - this.count.at(low);
    if (readings > 0) return this.reading(low, high, readings);
    return this.count.at(last) > 0 ? this.reading(0, last, this.count.at(last)) : this.nominal();
  }
  private reading(low: number, high: number, readings: number): SupplyReading {
    const mean = (this.sum.at(high) - this.sum.at(low)) / readings;
    const spread = (this.squares.at(high) - this.squares.at(low)) / readings - mean * mean;
    const code = mean + codesPerSpan / 2;
    const volts = (this.referenceV * codesPerSpan) / code;
    return { volts, u: (volts / code) * Math.sqrt(Math.max(spread, 1 / 12) / readings), readings };
  }
  private nominal(): SupplyReading {
    return { volts: this.nominalV, u: 0, readings: 0 };
  }
}
