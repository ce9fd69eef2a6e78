// SPDX-License-Identifier: MIT
// Two lithium cells in series: v = Voc(q) - i R0 - v1, C1 dv1/dt = i - v1/R1 (one polarisation pair).
// The open-circuit curve is from memory. It knows nothing of what draws the current.
import type { PackParameters } from './parameters.ts';

const chargePoints = [0, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];
const cellPoints = [3.3, 3.55, 3.68, 3.74, 3.77, 3.8, 3.84, 3.9, 3.98, 4.05, 4.11, 4.2];

function interpolate(x: number, xs: readonly number[], ys: readonly number[]): number {
  let i = 1;
  while (i < xs.length - 1 && x > xs[i]) i++;
  return ys[i - 1] + ((ys[i] - ys[i - 1]) * (x - xs[i - 1])) / (xs[i] - xs[i - 1]);
}
/** Open-circuit voltage of one cell at a state of charge 0..1; straight on beyond both ends. */
export const cellOpenV = (charge: number): number => interpolate(charge, chargePoints, cellPoints);
/** State of charge of a cell that rests at `cellV`. */
export const chargeAt = (cellV: number): number => interpolate(cellV, cellPoints, chargePoints);

export class Pack {
  /** Open-circuit voltage of both cells; refreshed by `settle`. */
  openV = 0;
  lowerOpenV = 0;
  polarisationV = 0;
  /** Charge taken since the start. */
  takenC = 0;
  private readonly decay: number;
  private readonly stepS: number;
  private readonly p: PackParameters;

  constructor(p: PackParameters, stepS: number) {
    this.p = p;
    this.stepS = stepS;
    this.decay = Math.exp(-stepS / p.polarisationS);
    this.settle();
  }
  /** Voltage behind the series resistance. */
  get sourceV(): number {
    return this.openV - this.polarisationV;
  }
  step(packA: number): void {
    const finalV = packA * this.p.polarisationOhm;
    this.polarisationV = finalV + (this.polarisationV - finalV) * this.decay;
    this.takenC += packA * this.stepS;
  }
  /** Moves along the open-circuit curve; it changes too slowly for every step. */
  settle(): void {
    const taken = this.takenC / (this.p.capacityAh * 3600);
    this.lowerOpenV = cellOpenV(this.p.charge[0] - taken);
    this.openV = this.lowerOpenV + cellOpenV(this.p.charge[1] - taken);
  }
  lowerCellV(packA: number): number {
    return this.lowerOpenV - (packA * this.p.seriesOhm + this.polarisationV) * this.p.lowerShare;
  }
  /** As the balance tap and the rig's common see it; of a changed-over pack, the upper cell below zero. */
  midV(packA: number): number {
    const lowerV = this.lowerCellV(packA);
    return this.p.reversed ? lowerV - this.openV + packA * this.p.seriesOhm + this.polarisationV : lowerV;
  }
}
