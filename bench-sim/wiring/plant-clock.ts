// SPDX-License-Identifier: MIT
// The plant and its tap filters in true time, in chunks of 24 us, against the cycles of a rig whose clock is off.
// Between the steps of the plant values lie on a straight line. It knows no board.
import type { HallEdge, Plant, PlantOutputs } from './plant.ts';
import type { RigErrors } from './rig-errors.ts';
import { TapFilters } from './tap-filters.ts';

export const NOMINAL_HZ = 16e6;
/** Three steps of the plant's usual 8 us. */
const CHUNK_S = 24e-6;

export class PlantClock {
  /** Processor cycles in a second of true time. */
  readonly trueHz: number;
  readonly filters: TapFilters;
  /** First cycle of the latest chunk, and the first after it. */
  fromCycle = 0;
  toCycle = 1;
  private chunk = 0;
  private readonly onStep = (outputs: PlantOutputs, dtS: number): void => this.filters.step(outputs, dtS);

  constructor(
    readonly plant: Plant,
    readonly errors: RigErrors,
  ) {
    this.trueHz = NOMINAL_HZ * (1 + errors.clock);
    this.filters = new TapFilters(errors);
  }
  /** One chunk more, with the plant's inputs as they are. */
  advance(onEdge: (edge: HallEdge) => void): void {
    this.filters.mark();
    this.fromCycle = this.chunk * CHUNK_S * this.trueHz;
    this.chunk++;
    this.toCycle = this.chunk * CHUNK_S * this.trueHz;
    this.plant.advance(this.chunk * CHUNK_S, this.onStep, onEdge);
  }
  /** How far a cycle lies along the latest chunk, 0 to 1. */
  fraction(cycle: number): number {
    const along = (cycle - this.fromCycle) / (this.toCycle - this.fromCycle);
    return along < 0 ? 0 : along > 1 ? 1 : along;
  }
}
