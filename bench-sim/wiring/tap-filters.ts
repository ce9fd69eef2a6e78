// SPDX-License-Identifier: MIT
// From the plant's quantities to volts at the converter's pins: gain, zero, and one RC pole a tap, stepped with
// the plant by the exact exponential. Between two steps of the plant it interpolates in a straight line.
import type { PlantOutputs } from './plant.ts';
import { type RigErrors, type TapName, tapNames } from './rig-errors.ts';

/** One filter an input of the converter or multiplexer; the wide probe is the same input with another jumper. */
const COUNT = tapNames.length - 1;
const JOINT_PROBE = tapNames.indexOf('jointProbe');
/** Values after each of the last steps are kept, in a ring of so many rows; a power of two. */
const ROWS = 8;
export const tapIndex = (name: TapName): number => tapNames.indexOf(name);

export class TapFilters {
  private readonly slope = new Float64Array(COUNT);
  private readonly zero = new Float64Array(COUNT);
  private readonly tau = new Float64Array(COUNT);
  private readonly pull = new Float64Array(COUNT);
  private readonly input = new Float64Array(COUNT);
  private readonly rows = new Float64Array(COUNT * ROWS);
  /** The row of the latest step, and the steps since the mark. */
  private row = 0;
  private steps = 0;
  private stepS = 0;
  private started = false;
  private probeWide = false;

  constructor(private readonly errors: RigErrors) {
    tapNames.slice(0, COUNT).forEach((name, i) => {
      this.scale(i, name);
      this.tau[i] = 1 / (2 * Math.PI * errors.taps[name].cornerHz);
    });
  }
  private scale(index: number, name: TapName): void {
    const tap = this.errors.taps[name];
    this.slope[index] = tap.voltsPerUnit * (1 + tap.gain);
    this.zero[index] = tap.zeroV + tap.offsetV;
  }

  /** `at` interpolates from here to the latest step, of which there may be seven. */
  mark(): void {
    this.steps = 0;
  }

  step(outputs: PlantOutputs, dtS: number): void {
    if (dtS !== this.stepS) this.setStep(dtS);
    if (outputs.probeWide !== this.probeWide) this.setJumper(outputs.probeWide);
    this.take(outputs);
    const { input, rows, pull } = this;
    if (!this.started) this.start();
    const from = COUNT * this.row;
    this.row = (this.row + 1) & (ROWS - 1);
    const to = COUNT * this.row;
    if (this.steps < ROWS - 1) this.steps++;
    for (let i = 0; i < COUNT; i++) {
      const before = rows[from + i];
      rows[to + i] = before + (input[i] - before) * pull[i];
    }
  }

  /** Volts of tap `index` at a fraction 0..1 from the mark to the latest step. */
  at(index: number, fraction: number): number {
    const behind = (1 - fraction) * this.steps;
    const whole = Math.floor(behind);
    const newer = this.rowsBack(whole, index);
    return newer + (this.rowsBack(whole + 1, index) - newer) * (behind - whole);
  }

  private rowsBack(steps: number, index: number): number {
    return this.rows[COUNT * ((this.row - steps) & (ROWS - 1)) + index];
  }

  private setJumper(wide: boolean): void {
    this.probeWide = wide;
    this.scale(JOINT_PROBE, wide ? 'jointProbeWide' : 'jointProbe');
  }

  private setStep(dtS: number): void {
    this.stepS = dtS;
    for (let i = 0; i < COUNT; i++) this.pull[i] = 1 - Math.exp(-dtS / this.tau[i]);
  }

  /** Order as in `tapNames`. */
  private take(outputs: PlantOutputs): void {
    const { input, slope, zero } = this;
    input[0] = outputs.packV;
    input[1] = outputs.packA;
    input[2] = outputs.railV;
    input[3] = outputs.railA;
    input[4] = outputs.controllerV;
    input[5] = outputs.packA;
    input[JOINT_PROBE] = outputs.probeV;
    input[7] = outputs.midCellV;
    input[8] = outputs.packV;
    for (let i = 0; i < COUNT; i++) input[i] = zero[i] + slope[i] * input[i];
  }

  private start(): void {
    this.started = true;
    for (let row = 0; row < ROWS; row++) this.rows.set(this.input, COUNT * row);
  }
}
