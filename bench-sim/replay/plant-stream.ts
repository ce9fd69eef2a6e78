// SPDX-License-Identifier: MIT
// What a rig would stream of a plant at rest under inputs that somebody holds: scans at the free-running instants of
// the converter, through the rig's errors and noise, without a processor. No edges, no bursts. It judges nothing.
import type { RigDescription } from '#core/samples/rig-description';
import { conversionsPerScan, scansPerBlock, type ScanBlock } from '#core/samples/scan-block';
import { ScanColumns } from '#core/samples/scan-columns';
import type { BoardAnalog } from '../machine/board.ts';
import { codeOf } from '../machine/converter.ts';
import type { SeededRandom } from '../seeded-random.ts';
import { analogFront } from '../wiring/analog-front.ts';
import { PlantClock } from '../wiring/plant-clock.ts';
import type { Plant } from '../wiring/plant.ts';
import type { RigErrors } from '../wiring/rig-errors.ts';
import { cyclesPerTick, holdCycles, samplesOf } from './run-template.ts';

const conversionCycles = 13 * 128;
const multiplexer = 7;
/** Place of the four taps in a scan, the multiplexer last. */
const order = [0, 1, 1, 0, 2, 3, 3, 2] as const;
type Fast = readonly [string, string, string, string];

export class PlantStream {
  readonly samples: ScanColumns;
  /** Seconds of true time are cycles over this. */
  readonly trueHz: number;
  private readonly clock: PlantClock;
  private readonly analog: BoardAnalog;
  private fast: readonly number[] = [];
  private scans = 0;
  private readonly blocks: ScanBlock[] = [];

  constructor(
    readonly plant: Plant,
    readonly rig: RigDescription,
    errors: RigErrors,
    noise: SeededRandom,
  ) {
    this.samples = new ScanColumns(rig);
    this.clock = new PlantClock(plant, errors);
    this.trueHz = this.clock.trueHz;
    this.analog = analogFront(this.clock, noise);
  }
  /** Ids of the four taps that are scanned from now on, the multiplexer beside them. Throws on a tap the rig lacks. */
  scan(fast: Fast): void {
    this.fast = fast.map((id) => {
      const tap = this.rig.descriptor.taps.find((known) => known.id === id);
      if (!tap) throw new RangeError(`This rig has no tap "${id}".`);
      return tap.channel;
    });
  }
  /** Streams so long in rig time, in whole blocks; the stretch that this made. */
  run(seconds: number): { readonly fromS: number; readonly toS: number } {
    const fromS = this.samples.latestS;
    do this.push(this.block());
    while (this.samples.latestS < fromS + seconds);
    return { fromS, toS: this.samples.latestS };
  }
  /** The same blocks as a rig with other calibrations would scale them. */
  seenBy(rig: RigDescription): ScanColumns {
    const samples = new ScanColumns(rig);
    for (const block of this.blocks) samples.push(block);
    return samples;
  }
  private push(block: ScanBlock): void {
    this.blocks.push(block);
    this.samples.push(block);
  }
  private block(): ScanBlock {
    const first = this.scans * conversionsPerScan;
    const codes = new Uint16Array(scansPerBlock * conversionsPerScan);
    for (let k = 0; k < codes.length; k++) codes[k] = this.codeAt(k, (first + k) * conversionCycles);
    const { scans: scan } = this;
    this.scans += scansPerBlock;
    const tick = (first * conversionCycles) / cyclesPerTick;
    return { ...quiet, scan, tick, fast: this.fast, samples: samplesOf(codes, 0) };
  }
  private codeAt(k: number, startCycle: number): number {
    const { clock, analog } = this;
    const cycle = startCycle + holdCycles;
    while (Math.ceil(clock.toCycle) <= cycle || clock.toCycle === 1) clock.advance(ignore);
    const slot = k % conversionsPerScan;
    const volts =
      slot < order.length
        ? analog.readTap(this.fast[order[slot]], cycle)
        : analog.readMultiplexer(Math.floor(k / conversionsPerScan), cycle);
    return codeOf(volts, analog.avccV);
  }
}
const ignore = (): void => undefined;
/** Nothing driven, nothing tripped, no edges. */
const quiet = {
  slow: multiplexer,
  slowFirst: 0,
  state: 0,
  trip: 0,
  outputs: 0,
  steering: 0,
  throttle: 0,
  edgesA: 0,
  edgesB: 0,
  edgesC: 0,
  badHall: 0,
  lastEdge: 0,
  edges: [],
} as const;
