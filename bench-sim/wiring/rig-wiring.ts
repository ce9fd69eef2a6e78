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
import type { HallEdge, Plant, PlantInputs } from './plant.ts';
import { PlantClock } from './plant-clock.ts';
import { type BoardVariant, drawRigErrors, type RigErrors } from './rig-errors.ts';
import { ServoPulses } from './servo-pulses.ts';
import type { RigWatcher } from './rig-watcher.ts';
import { NOMINAL_HZ } from './plant-clock.ts';

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
  private readonly plantClock: PlantClock;
  private readonly hall: HallFeed;
  private readonly inputs: Writable<PlantInputs>;
  private readonly onEdge = (edge: HallEdge): void => this.hall.take(edge);
  private readonly slot: number;
  private light = false;
  private restS: number | null = null;

  constructor(
    program: Program,
    private readonly plant: Plant,
    random: SeededRandom,
    faults: Faults,
    private readonly watcher?: RigWatcher,
    variant: BoardVariant = '2S',
  ) {
    this.errors = drawRigErrors(random.stream('rig'), variant);
    this.plantClock = new PlantClock(plant, this.errors);
    this.trueHz = this.plantClock.trueHz;
    this.inputs = plant.inputs;
    this.pulses = new ServoPulses(this.trueHz);
    this.board = this.makeBoard(program, random);
    const { queue } = this.board.chip;
    this.hall = new HallFeed(queue, this.trueHz, (line, high, cycle) => this.setLine(line, high, cycle));
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
    const analog = analogFront(this.plantClock, random.stream('converter noise'));
    const board = new Board({
      program,
      clockHz: NOMINAL_HZ,
      analog: this.watcher?.overhear(analog) ?? analog,
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

  private setLine(line: HallEdge['line'], high: boolean, cycle: number): void {
    if (line === 3 || line === 4) this.board.setReceiver(line === 3 ? 1 : 2, high, cycle);
    else this.board.setHall(line, high, cycle);
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
    this.watcher?.inputs(due, inputs, pulses.widths);
    this.plantClock.advance(this.onEdge);
    this.board.chip.queue.set(this.slot, Math.ceil(this.plantClock.toCycle));
  }

  private watchDrive(throttleS: number | null, cycle: number): void {
    if (throttleS === null) this.restS = null;
    else if (this.restS === null) this.restS = throttleS;
    else if (Math.abs(throttleS - this.restS) > DRIVE_S) this.person.drove(cycle);
  }
}
