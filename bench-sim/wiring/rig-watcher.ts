// SPDX-License-Identifier: MIT
// Who wants to know what passes between board and plant, without touching it.
import type { BoardAnalog } from '../machine/board.ts';
import type { PlantInputs } from './plant.ts';

export interface RigWatcher {
  /** The same analog front, overheard. */
  overhear(analog: BoardAnalog): BoardAnalog;
  /** Inputs that the plant gets at a cycle, and the pulse widths in cycles. */
  inputs(cycle: number, inputs: PlantInputs, widths: readonly [number, number]): void;
  person(cycle: number, act: string): void;
}
