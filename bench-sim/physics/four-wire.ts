// SPDX-License-Identifier: MIT
// Four wires at a part: the clips of the pack load send its current through, the tips of the joint probe touch inside
// of them. Joints and leads, and the three pairs of the motor's winding. It knows no tap.
import { copperFactor } from './copper.ts';
import type { CarParameters, JointParameters, MotorParameters } from './parameters.ts';
import type { SupplyLine } from './supply-line.ts';
import type { Warmth } from './warmth.ts';

/** Winding pairs A-B, B-C, C-A at 20 C: two star windings in series. */
export function pairOhms({ windingOhm, phaseShare: [a, b, c] }: MotorParameters): [number, number, number] {
  const half = windingOhm / 2;
  return [half * (a + b), half * (b + c), half * (c + a)];
}
interface Heated {
  readonly line: SupplyLine;
  readonly warmth: Warmth;
}
type Place = { readonly joint: JointParameters } | { readonly pair: 0 | 1 | 2 } | null;

export class FourWire {
  private place: Place = null;
  private ohm = 0;

  constructor(private readonly car: CarParameters) {}
  /** Takes effect when the pack load next comes on. */
  put(place: Place): void {
    this.place = place;
  }
  volts(loadA: number): number {
    return this.place === null ? 0 : this.ohm * loadA + this.car.probe.contactV;
  }
  tick({ line, warmth }: Heated, tickS: number): void {
    this.ohm = this.ohmNow(warmth);
    line.loadExtraOhm = this.place === null ? 0 : this.ohm + this.car.probe.clipOhm;
    if (line.loadA === 0 || !this.place || !('pair' in this.place)) return;
    warmth.motor.innerC += (line.loadA ** 2 * this.ohm * tickS) / this.car.motor.windingJPerK;
  }
  private ohmNow(warmth: Warmth): number {
    const { place, car } = this;
    if (place === null) return 0;
    if ('pair' in place) return pairOhms(car.motor)[place.pair] * copperFactor(warmth.motor.innerC);
    const { kind, ohm } = place.joint;
    return kind === 'lead' ? ohm * copperFactor(car.ambientC) : ohm;
  }
}
