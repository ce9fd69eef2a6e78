// SPDX-License-Identifier: MIT
// For tests: a plant in which nothing changes but Hall line A, toggled at an even distance, so that what the rig
// reports can be told beforehand.
import { type HallEdge, type Plant, type PlantOutputs, restingInputs } from '#sim/wiring/plant';

const STEP_S = 8e-6;

export class SteadyPlant implements Plant {
  readonly inputs = restingInputs();
  readonly acts: string[] = [];
  private readonly seen: PlantOutputs;
  private steps = 0;
  private edges = 0;

  constructor(
    outputs: Partial<PlantOutputs>,
    private readonly edgeEveryS = Number.POSITIVE_INFINITY,
  ) {
    this.seen = {
      packV: 7.6,
      controllerV: 0,
      packA: 0,
      railV: 0,
      railA: 0,
      midCellV: 3.8,
      probeV: 0,
      probeWide: false,
      thermistorC: [25, 25, 25, 25],
      hall: [false, false, true],
      ...outputs,
    };
  }
  outputs(): PlantOutputs {
    return this.seen;
  }
  advance(
    timeS: number,
    onStep: (outputs: PlantOutputs, dtS: number) => void,
    onEdge: (edge: HallEdge) => void,
  ): void {
    for (; this.steps * STEP_S < timeS - 1e-12; this.steps++) onStep(this.seen, STEP_S);
    for (let at = (this.edges + 1) * this.edgeEveryS; at <= timeS; at = (this.edges + 1) * this.edgeEveryS) {
      this.edges++;
      onEdge({ timeS: at, line: 0, level: this.edges % 2 === 1 });
    }
  }
  person(act: string): undefined {
    this.acts.push(act);
  }
  truth(): Readonly<Record<string, number>> {
    return {};
  }
}
