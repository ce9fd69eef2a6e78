// SPDX-License-Identifier: MIT
// Three Hall lines 120 electrical degrees apart, each with its own error of place and of duty. Edges are
// placed inside the step by the angle gone, taken as even over the step; backwards only when a hand turns it. Between
// sensor and rig a contact may be lost or a pulse added (sensor-cable.ts). It knows angles, no motor.
import type { HallEdge } from '../wiring/plant.ts';
import type { MotorParameters } from './parameters.ts';

const turn = 2 * Math.PI;
interface EdgePlace {
  readonly angleRad: number;
  readonly line: 0 | 1 | 2;
  readonly level: boolean;
}
/** What the cable does to a line: nothing, a contact lost (it lies low), a pulse that no magnet made. */
export type Spoiling = 'none' | 'lost' | 'pulsed';
const wrap = (angle: number): number => ((angle % turn) + turn) % turn;

/** Where in one electrical turn each line rises and falls. */
export function edgePlaces(p: MotorParameters): EdgePlace[] {
  const places: EdgePlace[] = [];
  for (const line of [0, 1, 2] as const) {
    const rise = (line * turn) / 3 + p.hallErrorRad[line] + p.hallOffsetRad;
    const seen = seenAs(line, p);
    if (p.deadHallLines[seen]) continue;
    places.push({ angleRad: wrap(rise), line: seen, level: true });
    places.push({ angleRad: wrap(rise + turn * p.hallDuty[line]), line: seen, level: false });
  }
  return places.toSorted((a, b) => a.angleRad - b.angleRad);
}
/** The line of the rig that a sensor ends at. */
const seenAs = (line: 0 | 1 | 2, p: MotorParameters): 0 | 1 | 2 =>
  p.hallLinesSwapped && line !== 0 ? (line === 1 ? 2 : 1) : line;

export class HallLines {
  readonly levels: [boolean, boolean, boolean] = [false, false, false];
  private readonly places: readonly EdgePlace[];
  private readonly magnet: [boolean, boolean, boolean] = [false, false, false];
  private readonly spoiling: [Spoiling, Spoiling, Spoiling] = ['none', 'none', 'none'];
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
    for (const line of [0, 1, 2] as const) this.show(line, timeS, onEdge);
  }
  spoil(line: 0 | 1 | 2, how: Spoiling, timeS: number, onEdge: (edge: HallEdge) => void): void {
    this.spoiling[line] = how;
    this.show(line, timeS, onEdge);
  }
  private show(line: 0 | 1 | 2, timeS: number, onEdge: (edge: HallEdge) => void): void {
    const how = this.spoiling[line];
    const level = this.powered && how !== 'lost' && this.magnet[line] !== (how === 'pulsed');
    if (level === this.levels[line]) return;
    this.levels[line] = level;
    onEdge({ timeS, line, level });
  }
  advance(turnedRad: number, startS: number, stepS: number, onEdge: (edge: HallEdge) => void): void {
    if (turnedRad < 0) return this.back(turnedRad, startS, stepS, onEdge);
    let fromRad = this.angleRad;
    this.angleRad += turnedRad;
    while (this.angleRad >= this.places[this.next].angleRad) {
      const { line, level, angleRad } = this.places[this.next];
      this.magnet[line] = level;
      this.show(line, startS + (stepS * (angleRad - fromRad)) / turnedRad, onEdge);
      if (++this.next === this.places.length) {
        this.toNextTurn();
        fromRad -= turn;
      }
    }
  }
  /** The edge passed is the one before the next; the level is what it was before that edge. */
  private back(turnedRad: number, startS: number, stepS: number, onEdge: (edge: HallEdge) => void): void {
    let fromRad = this.angleRad;
    this.angleRad += turnedRad;
    for (;;) {
      if (this.next === 0) {
        this.next = this.places.length;
        this.angleRad += turn;
        fromRad += turn;
      }
      const { line, level, angleRad } = this.places[this.next - 1];
      if (this.angleRad >= angleRad) break;
      this.next--;
      this.magnet[line] = !level;
      this.show(line, startS + (stepS * (angleRad - fromRad)) / turnedRad, onEdge);
    }
    if (this.next === this.places.length) this.toNextTurn();
  }
}
