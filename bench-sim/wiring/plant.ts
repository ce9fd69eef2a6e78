// SPDX-License-Identifier: MIT
// The seam between the board and the car on it. physics implements Plant; wiring turns pins into PlantInputs
// and PlantOutputs into voltages at converter pins. Neither side knows the other.

/** What the rig's outputs do to the car. Held constant during one advance. */
export interface PlantInputs {
  feed: 'off' | 'limited' | 'full';
  /** Bits of the load bank: 10, 4.7, 2.2 ohm at the rail. */
  loadMask: number;
  packLoad: boolean;
  bleeder: boolean;
  hallSupply: boolean;
  /** Last complete servo pulses, seconds; null while none came for 50 ms. */
  steeringPulseS: number | null;
  throttlePulseS: number | null;
}
/** Everything off, no pulses: before the rig did anything. */
export const restingInputs = (): PlantInputs => ({
  feed: 'off',
  loadMask: 0,
  packLoad: false,
  bleeder: false,
  hallSupply: false,
  steeringPulseS: null,
  throttlePulseS: null,
});
/** What the taps touch, SI, true values at the end of the last step. */
export interface PlantOutputs {
  packV: number;
  controllerV: number;
  packA: number;
  railV: number;
  railA: number;
  midCellV: number;
  /** Between the tips of the joint probe, and whether the person has set the probe's jumper to the wide range. */
  probeV: number;
  probeWide: boolean;
  /** Degrees C of the thermistor bodies as assigned: motor, servo case, controller, ambient. null: open. */
  thermistorC: readonly (number | null)[];
  /** Level of the three Hall lines as the rig sees them. */
  hall: readonly [boolean, boolean, boolean];
}
export interface HallEdge {
  /** Seconds since the start, interpolated inside the step. */
  readonly timeS: number;
  /** Hall A, B, C; 3 and 4: channels 1 and 2 of the receiver. */
  readonly line: 0 | 1 | 2 | 3 | 4;
  readonly level: boolean;
}
export interface Plant {
  readonly inputs: PlantInputs;
  /** Steps to `timeS` (at most 26 us beyond the last call in practice); calls `onStep` after each inner step. */
  advance(
    timeS: number,
    onStep: (outputs: PlantOutputs, dtS: number) => void,
    onEdge: (edge: HallEdge) => void,
  ): void;
  outputs(): PlantOutputs;
  /** What a person at the bench does when asked: 'horn against the block', 'stop pressed'... unknown words do nothing. Gives the
   *  figure that the words ask for, where a person at this car could read one. */
  person(act: string): number | undefined;
  /** True values of results, by result id, for the state reached ("no-load-current", "kv", "stall-current" ...). */
  truth(): Readonly<Record<string, number>>;
}
