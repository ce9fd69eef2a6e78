// SPDX-License-Identifier: MIT
// What a monitor at the pins would write down: every servo pulse with its width, every change of the shift
// registers' outputs, in seconds of true time. It changes nothing.
import type { VirtualRig } from '#sim/virtual-rig';

export interface Pulse {
  readonly line: 'steering' | 'throttle';
  readonly endS: number;
  readonly widthUs: number;
}
export interface Outputs {
  readonly atS: number;
  readonly loads: number;
  readonly feed: number;
}
export class PinLog {
  readonly pulses: Pulse[] = [];
  readonly outputs: Outputs[] = [];
  private readonly rose: Record<number, number> = {};

  constructor(private readonly rig: VirtualRig) {
    const { board } = rig;
    const { onServo, onOutputs } = board;
    board.onServo = (line, high, cycle) => {
      onServo(line, high, cycle);
      this.servo(line, high, cycle);
    };
    board.onOutputs = (cycle) => {
      onOutputs(cycle);
      this.noteOutputs(cycle);
    };
  }
  pulsesOf(line: Pulse['line'], fromS = 0, toS = Infinity): Pulse[] {
    return this.pulses.filter((pulse) => pulse.line === line && pulse.endS >= fromS && pulse.endS < toS);
  }
  outputsFrom(fromS: number): Outputs[] {
    return this.outputs.filter(({ atS }) => atS >= fromS);
  }
  private servo(line: 0 | 1, high: boolean, cycle: number): void {
    if (high) this.rose[line] = cycle;
    else if (this.rose[line] !== undefined) {
      const endS = cycle / this.rig.trueHz;
      const widthUs = ((cycle - this.rose[line]) / this.rig.trueHz) * 1e6;
      this.pulses.push({ line: line === 0 ? 'steering' : 'throttle', endS, widthUs });
    }
  }
  private noteOutputs(cycle: number): void {
    const register = this.rig.board.deadManAlive ? this.rig.board.registers.register1 : 0;
    this.outputs.push({ atS: cycle / this.rig.trueHz, loads: register & 7, feed: (register >> 3) & 3 });
  }
}
