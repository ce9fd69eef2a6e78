// SPDX-License-Identifier: MIT
// What passed between one emulated board and its plant in one run: what the plant was given and when, what a
// person did, and every conversion with the code it got. Times are processor cycles. It knows no messages.
import { codeOf } from '../machine/converter.ts';
import type { BoardAnalog } from '../machine/board.ts';
import type { PlantInputs } from '../wiring/plant.ts';
import type { RigWatcher } from '../wiring/rig-watcher.ts';
import { GrowingColumn } from '#core/samples/growing-column';

type Switches = Omit<PlantInputs, 'steeringPulseS' | 'throttlePulseS'>;
/** Pulse widths in cycles instead of seconds: another rig's clock makes other seconds of them. */
export interface GivenInputs extends Switches {
  readonly steeringCycles: number | null;
  readonly throttleCycles: number | null;
}
export type BenchEvent =
  { readonly cycle: number; readonly inputs: GivenInputs } | { readonly cycle: number; readonly act: string };

/** Inputs of the multiplexer are kept as 8 and more. */
export const firstMultiplexed = 8;

export class BenchLog implements RigWatcher {
  readonly events: BenchEvent[] = [];
  /** One entry a conversion: the cycle of its sample, the input, the code. */
  readonly cycles = new GrowingColumn(Float64Array);
  readonly inputsRead = new GrowingColumn(Uint8Array);
  readonly codes = new GrowingColumn(Uint16Array);
  private last: GivenInputs | null = null;

  overhear(analog: BoardAnalog): BoardAnalog {
    const keep = (input: number, cycle: number, volts: number): number => {
      this.cycles.push(cycle);
      this.inputsRead.push(input);
      this.codes.push(codeOf(volts, analog.avccV));
      return volts;
    };
    return {
      ...analog,
      readTap: (channel, cycle) => keep(channel, cycle, analog.readTap(channel, cycle)),
      readMultiplexer: (input, cycle) =>
        keep(firstMultiplexed + input, cycle, analog.readMultiplexer(input, cycle)),
    };
  }
  inputs(cycle: number, inputs: PlantInputs, [steering, throttle]: readonly [number, number]): void {
    const steeringCycles = inputs.steeringPulseS === null ? null : steering;
    const throttleCycles = inputs.throttlePulseS === null ? null : throttle;
    const { last } = this;
    const pulsesStay = last?.steeringCycles === steeringCycles && last.throttleCycles === throttleCycles;
    if (last && pulsesStay && sameSwitches(last, inputs)) return;
    const { feed, loadMask, packLoad, bleeder, hallSupply } = inputs;
    this.last = { feed, loadMask, packLoad, bleeder, hallSupply, steeringCycles, throttleCycles };
    this.events.push({ cycle, inputs: this.last });
  }
  person(cycle: number, act: string): void {
    this.events.push({ cycle, act });
  }
}
/** Asked once a chunk of 24 us, so without objects. */
const sameSwitches = (a: Switches, b: Switches): boolean =>
  a.feed === b.feed &&
  a.loadMask === b.loadMask &&
  a.packLoad === b.packLoad &&
  a.bleeder === b.bleeder &&
  a.hallSupply === b.hallSupply;
