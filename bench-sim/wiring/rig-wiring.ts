// SPDX-License-Identifier: MIT
// Joins the board's pins and the plant: outputs become plant inputs, plant outputs become volts and timed Hall
// edges. The plant runs in true time, in chunks of 24 us ahead of the processor. It knows no protocol.
import { Board } from '../machine/board.ts';
import type { Program } from '../machine/intel-hex.ts';
import { type Faults, severityOf } from '../faults/faults.ts';
import type { SeededRandom } from '../seeded-random.ts';
import { analogFront } from './analog-front.ts';
import { BenchPerson } from './bench-person.ts';
import { HallFeed } from './hall-feed.ts';
import type { HallEdge, Plant, PlantInputs, PlantOutputs } from './plant.ts';
import { drawRigErrors, type RigErrors } from './rig-errors.ts';
import { ServoPulses } from './servo-pulses.ts';
import { TapFilters } from './tap-filters.ts';

const NOMINAL_HZ = 16e6;
/** Three steps of the plant's usual 8 us. */
const CHUNK_S = 24e-6;
/** A pulse that moves by more than this from its rest is a drive. */
const DRIVE_S = 20e-6;

type Writable<T> = { -readonly [K in keyof T]: T[K] };

export class RigWiring {
  readonly board: Board;
  readonly errors: RigErrors;
  /** Processor cycles in a second of true time. */
  readonly trueHz: number;
  readonly pulses: ServoPulses;
  readonly person: BenchPerson;
  private readonly filters: TapFilters;
  private readonly hall: HallFeed;
  private readonly inputs: Writable<PlantInputs>;
  private readonly onStep = (outputs: PlantOutputs, dtS: number): void => this.filters.step(outputs, dtS);
  private readonly onEdge = (edge: HallEdge): void => this.hall.take(edge);
  private readonly slot: number;
  private chunk = 0;
  private fromCycle = 0;
  private toCycle = 1;
  private light = false;
  private restS: number | null = null;

  constructor(
    program: Program,
    private readonly plant: Plant,
    random: SeededRandom,
    faults: Faults,
  ) {
    this.errors = drawRigErrors(random.stream('rig'));
    this.trueHz = NOMINAL_HZ * (1 + this.errors.clock);
    this.inputs = plant.inputs;
    this.filters = new TapFilters(this.errors);
    this.pulses = new ServoPulses(this.trueHz);
    this.board = this.makeBoard(program, random);
    const { queue } = this.board.chip;
    this.hall = new HallFeed(queue, this.trueHz, (line, high, cycle) =>
      this.board.setHall(line, high, cycle),
    );
    const lineBreaks = severityOf(faults, 'stop-line-open') > 0.5;
    this.person = new BenchPerson(queue, this.trueHz, lineBreaks, (open, cycle) =>
      this.board.setStop(open, cycle),
    );
    this.slot = queue.slot((due) => this.advancePlant(due));
    this.connect();
    this.advancePlant(0);
  }

  private makeBoard(program: Program, random: SeededRandom): Board {
    const chance = random.stream('power-on');
    const fraction = (cycle: number): number => {
      const along = (cycle - this.fromCycle) / (this.toCycle - this.fromCycle);
      return along < 0 ? 0 : along > 1 ? 1 : along;
    };
    const board = new Board({
      program,
      clockHz: NOMINAL_HZ,
      analog: analogFront(this.errors, this.filters, this.plant, fraction, random.stream('converter noise')),
      deadManS: this.errors.deadManS,
      watchdogError: this.errors.watchdog,
      registerChance: chance.uint32(),
    });
    board.chip.fillRam(() => chance.uint32() & 0xff);
    return board;
  }

  private connect(): void {
    const { board, pulses } = this;
    board.onServo = (line, high, cycle) => pulses.edge(line, high, cycle);
    board.onOutputs = (cycle) => this.outputsChanged(cycle);
    this.plant.outputs().hall.forEach((high, line) => board.setHall(line as 0 | 1 | 2, high, 0));
  }

  private outputsChanged(cycle: number): void {
    const { register1, register2 } = this.board.registers;
    const { inputs } = this;
    inputs.loadMask = register1 & 7;
    inputs.feed = register1 & 0x10 ? 'full' : register1 & 0x08 ? 'limited' : 'off';
    inputs.hallSupply = (register2 & 0x04) !== 0;
    inputs.bleeder = (register2 & 0x08) !== 0;
    inputs.packLoad = (register2 & 0x20) !== 0;
    if (this.board.light === this.light) return;
    this.light = this.board.light;
    this.person.lightChanged(this.light, cycle);
  }

  private advancePlant(due: number): void {
    const { inputs, pulses } = this;
    inputs.steeringPulseS = pulses.widthS(0, due);
    inputs.throttlePulseS = pulses.widthS(1, due);
    this.watchDrive(inputs.throttlePulseS, due);
    this.filters.mark();
    this.fromCycle = this.chunk * CHUNK_S * this.trueHz;
    this.chunk++;
    this.toCycle = this.chunk * CHUNK_S * this.trueHz;
    this.plant.advance(this.chunk * CHUNK_S, this.onStep, this.onEdge);
    this.board.chip.queue.set(this.slot, Math.ceil(this.toCycle));
  }

  private watchDrive(throttleS: number | null, cycle: number): void {
    if (throttleS === null) this.restS = null;
    else if (this.restS === null) this.restS = throttleS;
    else if (Math.abs(throttleS - this.restS) > DRIVE_S) this.person.drove(cycle);
  }
}
