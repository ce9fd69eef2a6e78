// SPDX-License-Identifier: MIT
// A plant with a person's meter on it, and with what a person puts in its place while calibrating: the voltage leads
// on one source, the thermistors in one bath. Display means of the meter are of true values. It knows no meter's error.
import type { HallEdge, Plant, PlantInputs, PlantOutputs } from './plant.ts';

/** Three displays a second, as hand-held meters make (common practice, no source). */
const displayS = 1 / 3;
type Current = 'packA' | 'railA';

export class MeteredPlant implements Plant {
  /** All voltage leads lie on this source; null: on the car. */
  sourceV: number | null = null;
  /** All thermistors lie in this bath; null: on the car. */
  bathC: number | null = null;
  /** False: no meter is there, and the car is passed through. */
  inHand = true;
  private readonly sum: Record<Current, number> = { packA: 0, railA: 0 };
  private readonly held: Record<Current, number> = { packA: 0, railA: 0 };
  private spanS = 0;
  private stepOutputs: (outputs: PlantOutputs, dtS: number) => void = () => undefined;
  private readonly onStep = (outputs: PlantOutputs, dtS: number): void => {
    this.measure(outputs, dtS);
    this.stepOutputs(this.seen(outputs), dtS);
  };

  constructor(private readonly plant: Plant) {}
  get inputs(): PlantInputs {
    return this.plant.inputs;
  }
  advance(
    timeS: number,
    onStep: (outputs: PlantOutputs, dtS: number) => void,
    onEdge: (edge: HallEdge) => void,
  ): void {
    if (!this.inHand) return this.plant.advance(timeS, onStep, onEdge);
    this.stepOutputs = onStep;
    this.plant.advance(timeS, this.onStep, onEdge);
  }
  outputs(): PlantOutputs {
    return this.seen(this.plant.outputs());
  }
  person(act: string): number | undefined {
    return this.plant.person(act);
  }
  truth(): Readonly<Record<string, number>> {
    return this.plant.truth();
  }
  /** The meter goes, leads and thermistors go back on the car. */
  putAway(): void {
    this.sourceV = this.bathC = null;
    this.inHand = false;
  }
  /** The greatest display since the last call. */
  takeHeld(current: Current): number {
    const value = this.held[current];
    this.held[current] = 0;
    return value;
  }
  private seen(outputs: PlantOutputs): PlantOutputs {
    const { sourceV, bathC } = this;
    if (sourceV === null && bathC === null) return outputs;
    const thermistorC = bathC === null ? outputs.thermistorC : outputs.thermistorC.map(() => bathC);
    if (sourceV === null) return { ...outputs, thermistorC };
    return { ...outputs, thermistorC, packV: sourceV, controllerV: sourceV, railV: sourceV };
  }
  private measure({ packA, railA }: PlantOutputs, dtS: number): void {
    this.sum.packA += packA * dtS;
    this.sum.railA += railA * dtS;
    this.spanS += dtS;
    if (this.spanS < displayS) return;
    for (const name of ['packA', 'railA'] as const) {
      this.held[name] = Math.max(this.held[name], this.sum[name] / this.spanS);
      this.sum[name] = 0;
    }
    this.spanS = 0;
  }
}
