// SPDX-License-Identifier: MIT
// The sample store of one run: takes scan blocks, answers with values in SI on one time axis, finds what was
// lost. Raw columns stay untouched in `raw`. It does not know links, screens, checks or verdicts.
import { BlockColumns } from './block-columns.ts';
import { EdgeTrain } from './edge-train.ts';
import { GrowingColumn } from './growing-column.ts';
import type { RigDescription, Tap } from './rig-description.ts';
import type { ClockFit, SampleStore, Series, StatusSeries, SupplyReading } from './sample-store.ts';
import { conversionsPerScan, scansPerBlock, type ScanBlock } from './scan-block.ts';
import { SupplyTrack } from './supply-track.ts';
import { isClipped, scaled, tapScaling, type TapScaling } from './tap-scaling.ts';

const multiplexer = 7;
/** Mean time of a pair's two conversions, and of the slow one, in conversions after the scan began. */
const slotConversions = [1.5, 1.5, 5.5, 5.5, 8] as const;
/** The input is held one and a half converter clocks after a conversion starts: 12 us of 104 us. */
const holdConversions = 1.5 / 13;

/** Where a tap sits in one block: slot 0..4 of scans `first`, `first + step`, ... */
interface Place {
  readonly slot: number;
  readonly first: number;
  readonly step: number;
}
interface At {
  readonly block: number;
  readonly scan: number;
  readonly slot: number;
  readonly supplyV: number;
}
export class ScanColumns implements SampleStore {
  readonly raw = new BlockColumns();
  readonly gaps: { readonly fromS: number; readonly toS: number; readonly scans: number }[] = [];
  readonly marks: { readonly atS: number; readonly label: string }[] = [];
  clock: ClockFit;
  private readonly train = new EdgeTrain();
  private readonly supplies: SupplyTrack;
  private readonly counts = {
    edgesA: new GrowingColumn(Float64Array),
    edgesB: new GrowingColumn(Float64Array),
    edgesC: new GrowingColumn(Float64Array),
    badHall: new GrowingColumn(Float64Array),
    lastEdge: new GrowingColumn(Float64Array),
  };

  constructor(readonly rig: RigDescription) {
    const { reference, nominalSupplyV, clockTolerance } = rig.descriptor;
    this.supplies = new SupplyTrack(reference.volts, nominalSupplyV);
    this.clock = { ratio: 1, halfWidth: clockTolerance, origin: 'descriptor' };
  }
  /** Takes the next block; blocks must come in the order the rig sent them. */
  push(block: ScanBlock): void {
    const index = this.raw.length;
    this.raw.push(block);
    this.noteGap(index);
    this.train.push(block, this.raw.sinceFirst.at(index));
    this.supplies.push(this.referenceCode(block));
    this.count('edgesA', index, 0xffff);
    for (const name of ['edgesB', 'edgesC', 'badHall'] as const) this.count(name, index, 0xff);
    this.counts.lastEdge.push(this.train.last);
  }
  mark(label: string, atS = this.latestS): void {
    this.marks.push({ atS, label });
  }
  get latestS(): number {
    const last = this.raw.length - 1;
    return last < 0 ? 0 : this.blockS(last) + (scansPerBlock - 1) * this.scanS;
  }
  /** Seconds of the run's axis for a tick of the wire, the one nearest to the newest block. */
  timeOfTick(tick: number): number {
    const last = this.raw.length - 1;
    if (last < 0) return 0;
    return (this.raw.sinceFirst.at(last) + ((tick - this.raw.longs.tick.at(last)) | 0)) * this.tickS;
  }
  series(id: string, fromS: number, toS: number): Series {
    const scaling = tapScaling(this.rig, id);
    const times: number[] = [];
    const values: number[] = [];
    let clipped = 0;
    if (scaling)
      for (const { atS, value, ends } of this.readings(scaling, fromS, toS)) {
        if (ends) clipped++;
        else {
          times.push(atS);
          values.push(value);
        }
      }
    return {
      timeS: Float64Array.from(times),
      value: Float64Array.from(values),
      clipped,
      lost: this.lost(fromS, toS),
    };
  }
  latest(id: string): { readonly value: number; readonly atS: number } | null {
    const scaling = tapScaling(this.rig, id);
    if (!scaling) return null;
    for (let block = this.raw.length - 1; block >= 0; block--) {
      const last = [...this.inBlock(scaling, block)].at(-1);
      if (last) return { value: last.value, atS: last.atS };
    }
    return null;
  }
  edges(fromS: number, toS: number): Float64Array {
    const ticks = this.train.all;
    return ticks
      .slice(firstAtOrAfter(ticks, fromS / this.tickS), firstAtOrAfter(ticks, toS / this.tickS))
      .map((t) => t * this.tickS);
  }
  status(fromS: number, toS: number): StatusSeries {
    const [from, to] = this.blocksBetween(fromS, toS);
    const { words } = this.raw;
    const us = (column: Uint16Array) =>
      Float64Array.from(column.subarray(from, to), (ticks) => ticks * this.tickS * 1e6);
    return {
      timeS: this.raw.sinceFirst
        .view()
        .slice(from, to)
        .map((t) => t * this.tickS),
      outputs: words.outputs.view().slice(from, to),
      steeringUs: us(words.steering.view()),
      throttleUs: us(words.throttle.view()),
      edgesA: this.counts.edgesA.view().slice(from, to),
      edgesB: this.counts.edgesB.view().slice(from, to),
      edgesC: this.counts.edgesC.view().slice(from, to),
      badHall: this.counts.badHall.view().slice(from, to),
      lastEdgeS: this.counts.lastEdge
        .view()
        .slice(from, to)
        .map((t) => t * this.tickS),
    };
  }
  supply(fromS: number, toS: number): SupplyReading {
    return this.supplies.over(...this.blocksBetween(fromS, toS));
  }

  private get tickS(): number {
    return this.rig.descriptor.tickS;
  }
  private get scanS(): number {
    return this.rig.descriptor.conversionTicks * conversionsPerScan * this.tickS;
  }
  private blockS(block: number): number {
    return this.raw.sinceFirst.at(block) * this.tickS;
  }
  /** Blocks whose first scan lies in the stretch. */
  private blocksBetween(fromS: number, toS: number): [number, number] {
    const ticks = this.raw.sinceFirst.view();
    return [firstAtOrAfter(ticks, fromS / this.tickS), firstAtOrAfter(ticks, toS / this.tickS)];
  }
  private *readings(scaling: TapScaling, fromS: number, toS: number) {
    const [from, to] = this.blocksBetween(fromS - scansPerBlock * this.scanS, toS);
    for (let block = from; block < to; block++)
      for (const reading of this.inBlock(scaling, block))
        if (reading.atS >= fromS && reading.atS < toS) yield reading;
  }
  private *inBlock(scaling: TapScaling, block: number) {
    const places = this.placesOf(scaling.tap, block);
    if (places.length === 0) return;
    const supplyV = this.supplies.near(block);
    for (let scan = 0; scan < scansPerBlock; scan++)
      for (const { slot, first, step } of places)
        if ((scan - first) % step === 0) yield this.readingAt(scaling, { block, scan, slot, supplyV });
  }
  private readingAt(scaling: TapScaling, { block, scan, slot, supplyV }: At) {
    const perValue = slot < 4 ? 2 : 1;
    const code = this.raw.sample(block, scan, slot) / perValue;
    const value = scaled(scaling, code, supplyV);
    const conversions = slotConversions[slot] + holdConversions;
    const intoS = scan * this.scanS + conversions * this.rig.descriptor.conversionTicks * this.tickS;
    return {
      atS: this.blockS(block) + intoS,
      value,
      ends: isClipped(scaling.tap, code, perValue, value),
    };
  }
  /** A tap may be scanned in several fast slots, to be seen more often; in the order of time. */
  private placesOf(tap: Tap, block: number): Place[] {
    const places: Place[] = [];
    for (let slot = 0; slot < 4; slot++)
      if (this.raw.fast.at(block * 4 + slot) === tap.channel && tap.mux === undefined)
        places.push({ slot, first: 0, step: 1 });
    if (places.length > 0 || this.raw.bytes.slow.at(block) !== tap.channel) return places;
    if (tap.mux === undefined) return [{ slot: 4, first: 0, step: 1 }];
    return [{ slot: 4, first: (tap.mux - this.raw.bytes.slowFirst.at(block)) & 7, step: 8 }];
  }
  private referenceCode(block: ScanBlock): number | null {
    if (block.slow !== multiplexer) return null;
    const scan = (this.rig.descriptor.reference.mux - block.slowFirst) & 7;
    const code = block.samples[scan * 5 + 4];
    return code > 0 && code < 1023 ? code : null;
  }
  private count(name: 'edgesA' | 'edgesB' | 'edgesC' | 'badHall', index: number, mask: number): void {
    const column = name === 'edgesA' ? this.raw.words.edgesA : this.raw.bytes[name];
    const before = index === 0 ? column.at(0) : column.at(index - 1);
    const total = index === 0 ? 0 : this.counts[name].at(index - 1);
    this.counts[name].push(total + ((column.at(index) - before) & mask));
  }
  /** A jump of the scan number by whole blocks is a loss. A pause (a burst) is none, nor is the rest of a block that
   *  a scan list cut short: fewer scans than a block has. */
  private noteGap(index: number): void {
    if (index === 0) return;
    const missing =
      ((this.raw.longs.scan.at(index) - this.raw.longs.scan.at(index - 1)) >>> 0) - scansPerBlock;
    if (missing < scansPerBlock || missing > 0x7fffffff) return;
    const fromS = this.blockS(index - 1) + scansPerBlock * this.scanS;
    this.gaps.push({ fromS, toS: this.blockS(index), scans: missing });
  }
  private lost(fromS: number, toS: number): number {
    const touched = this.gaps.filter((gap) => gap.toS > fromS && gap.fromS < toS);
    return touched.reduce((sum, gap) => sum + gap.scans, 0);
  }
}
/** Index of the first value that is not below `wanted` in a rising column. */
function firstAtOrAfter(column: Float64Array, wanted: number): number {
  let low = 0;
  let high = column.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (column[middle] < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
}
