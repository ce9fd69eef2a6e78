// SPDX-License-Identifier: MIT
// Three Hall lines 120 electrical degrees apart, each with its own error of place and of duty. Edges are
// placed inside the step by the angle gone, taken as even over the step. It knows angles, no motor.
import type { HallEdge } from '../wiring/plant.ts';
import type { MotorParameters } from './parameters.ts';

const turn = 2 * Math.PI;
interface EdgePlace {
  readonly angleRad: number;
  readonly line: 0 | 1 | 2;
  readonly level: boolean;
}
const wrap = (angle: number): number => ((angle % turn) + turn) % turn;

/** Where in one electrical turn each line rises and falls. */
export function edgePlaces(p: MotorParameters): EdgePlace[] {
  const places: EdgePlace[] = [];
  for (const line of [0, 1, 2] as const) {
    if (line === 0 && p.hallADead) continue;
    const rise = (line * turn) / 3 + p.hallErrorRad[line] + p.hallOffsetRad;
    places.push({ angleRad: wrap(rise), line, level: true });
    places.push({ angleRad: wrap(rise + turn * p.hallDuty[line]), line, level: false });
  }
  return places.toSorted((a, b) => a.angleRad - b.angleRad);
}

export class HallLines {
  readonly levels: [boolean, boolean, boolean] = [false, false, false];
  private readonly places: readonly EdgePlace[];
  private readonly magnet: [boolean, boolean, boolean] = [false, false, false];
  private next = 0;
  private angleRad: number;
  private powered = false;

  constructor(p: MotorParameters) {
    this.places = edgePlaces(p);
    this.angleRad = wrap(p.startAngleRad);
    for (const place of this.places) this.magnet[place.line] ||= this.isHigh(place.line);
    while (this.next < this.places.length && this.places[this.next].angleRad <= this.angleRad) this.next++;
    if (this.next === this.places.length) this.toNextTurn();
  }
  /** The level at the present angle is that of the last edge passed on this line. */
  private isHigh(line: number): boolean {
    const own = this.places.filter((place) => place.line === line);
    return (own.findLast((place) => place.angleRad <= this.angleRad) ?? own[own.length - 1]).level;
  }
  private toNextTurn(): void {
    this.next = 0;
    this.angleRad -= turn;
  }
  /** Without supply the lines lie low; a change of supply is an edge like any other. */
  supply(on: boolean, timeS: number, onEdge: (edge: HallEdge) => void): void {
    if (on === this.powered) return;
    this.powered = on;
    for (const line of [0, 1, 2] as const) {
      if (this.magnet[line]) this.put(line, on, timeS, onEdge);
    }
  }
  private put(line: 0 | 1 | 2, level: boolean, timeS: number, onEdge: (edge: HallEdge) => void): void {
    this.levels[line] = level;
    onEdge({ timeS, line, level });
  }
  advance(turnedRad: number, startS: number, stepS: number, onEdge: (edge: HallEdge) => void): void {
    let fromRad = this.angleRad;
    this.angleRad += turnedRad;
    while (this.angleRad >= this.places[this.next].angleRad) {
      const { line, level, angleRad } = this.places[this.next];
      this.magnet[line] = level;
      const timeS = startS + (stepS * (angleRad - fromRad)) / turnedRad;
      if (this.powered) this.put(line, level, timeS, onEdge);
      if (++this.next === this.places.length) {
        this.toNextTurn();
        fromRad -= turn;
      }
    }
  }
}
