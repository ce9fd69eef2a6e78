// SPDX-License-Identifier: MIT
// The cable between motor and controller as its faults show it: contacts that are lost for some milliseconds while
// somebody moves it, and pulses that no magnet made. Looked at once a millisecond. It knows lines, no rotor.
import { seededRandom, type SeededRandom } from '../seeded-random.ts';
import type { HallEdge } from '../wiring/plant.ts';
import type { HallLines, Spoiling } from './hall-lines.ts';
import type { CarParameters } from './parameters.ts';

/** Longest loss of a Hall contact and of the thermistor's, ms. */
const longestLossMs = 25;
const longestThermistorLossMs = 120;
const noisyLine = 1;

export class SensorCable {
  moved = false;
  /** The thermistor's contact is lost at this moment. */
  thermistorLost = false;
  /** Whether there is anything to do at all. */
  readonly isSound: boolean;
  private line: 0 | 1 | 2 = 0;
  private lineLeftMs = 0;
  private thermistorLeftMs = 0;
  private readonly random: SeededRandom;

  constructor(private readonly car: CarParameters) {
    const { motor, sensor } = car;
    this.isSound = motor.hallNoiseHz + motor.hallLooseHz + sensor.motorLooseHz === 0;
    this.random = seededRandom(Math.floor(motor.startAngleRad * 1e6), 'sensor cable');
  }
  tick(hall: HallLines, timeS: number, tickS: number, onEdge: (edge: HallEdge) => void): void {
    if (this.isSound) return;
    this.thermistor(tickS);
    if (this.lineLeftMs > 0) {
      if (--this.lineLeftMs === 0) hall.spoil(this.line, 'none', timeS, onEdge);
    } else this.begin(hall, timeS, tickS, onEdge);
  }
  private begin(hall: HallLines, timeS: number, tickS: number, onEdge: (edge: HallEdge) => void): void {
    const { hallNoiseHz, hallLooseHz } = this.car.motor;
    if (this.happens(hallNoiseHz, tickS)) this.spoil(hall, noisyLine, 'pulsed', 1, timeS, onEdge);
    else if (this.moved && this.happens(hallLooseHz, tickS)) {
      const line = Math.floor(3 * this.random.unit()) as 0 | 1 | 2;
      this.spoil(hall, line, 'lost', 1 + Math.floor(longestLossMs * this.random.unit()), timeS, onEdge);
    }
  }
  private spoil(
    hall: HallLines,
    line: 0 | 1 | 2,
    how: Spoiling,
    ms: number,
    timeS: number,
    onEdge: (edge: HallEdge) => void,
  ): void {
    this.line = line;
    this.lineLeftMs = ms;
    hall.spoil(line, how, timeS, onEdge);
  }
  private thermistor(tickS: number): void {
    if (this.thermistorLeftMs > 0) this.thermistorLeftMs--;
    else if (this.moved && this.happens(this.car.sensor.motorLooseHz, tickS))
      this.thermistorLeftMs = 10 + Math.floor(longestThermistorLossMs * this.random.unit());
    this.thermistorLost = this.thermistorLeftMs > 0;
  }
  private readonly happens = (perS: number, tickS: number): boolean =>
    perS > 0 && this.random.unit() < perS * tickS;
}
