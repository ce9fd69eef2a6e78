// SPDX-License-Identifier: MIT
// What the plant keeps of a servo for its truths: rests, slow sweeps, the horn on its spline; and what its speed and
// its limited stall are by hand arithmetic.
import { describe, expect, it } from 'vitest';
import { drawCar, drawParameters } from './population.ts';
import { ServoHorn } from './servo-horn.ts';
import { ServoRest } from './servo-rest.ts';
import { ServoSweep } from './servo-sweep.ts';
import { runningAt } from './servo-truth.ts';
import { stallA, stallPlugA } from './steady-state.ts';

const tickS = 1e-3;
const degrees = Math.PI / 180;

describe('a rest', () => {
  /** Current over time at a pulse that stays, after `beforeS` of another one. */
  function watch(amps: (timeS: number) => number, seconds: number, pulseS = 1.5e-3): ServoRest {
    const rest = new ServoRest();
    let [chargeC, squareA2s] = [0, 0];
    for (let k = 0; k < seconds / tickS; k++) {
      const plugA = amps(k * tickS);
      chargeC += plugA * tickS;
      squareA2s += plugA * plugA * tickS;
      rest.tick({ chargeC, squareA2s, plugA }, pulseS, tickS);
    }
    return rest;
  }
  it('is none before it has settled, nor away from the centre', () => {
    expect(watch(() => 0.01, 0.7).longest()).toBeNull();
    expect(watch(() => 0.01, 3, 1.4e-3).longest()).toBeNull();
  });
  it('of a steady current has its mean and nothing that alternates', () => {
    const seen = watch(() => 0.01, 2).longest()!;
    expect(seen.meanA).toBeCloseTo(0.01, 9);
    expect(seen.alternatingA).toBeLessThan(1e-6);
    expect(seen.pulsesPerS).toBe(0);
  });
  // A square wave between 0 and 0.4 A has a mean of 0.2 A and an r.m.s. value of 0.2 A about it.
  it('of a square wave of 25 Hz has mean, r.m.s. value and rate', () => {
    const seen = watch((t) => ((t * 25) % 1 < 0.5 ? 0.4 : 0), 2.6).longest()!;
    expect(seen.meanA).toBeCloseTo(0.2, 2);
    expect(seen.alternatingA).toBeCloseTo(0.2, 2);
    expect(seen.pulsesPerS).toBeCloseTo(25, 1);
  });
  it('never takes more than three seconds', () =>
    expect(watch(() => 0.01, 10).longest()!.lengthS).toBeLessThan(3.01));
});
describe('a slow sweep', () => {
  function led(amps: (pulseS: number) => number, secondsOneWay: number): ServoSweep {
    const sweep = new ServoSweep();
    let chargeC = 0;
    const ticks = secondsOneWay / tickS;
    for (let k = 0; k <= 2 * ticks; k++) {
      const pulseS = 1.1e-3 + (8e-4 * (k <= ticks ? k : 2 * ticks - k)) / ticks;
      chargeC += amps(pulseS) * tickS;
      sweep.tick({ chargeC }, pulseS, tickS);
    }
    return sweep;
  }
  it('has the mean of both ways, and the current by place', () => {
    const seen = led((pulseS) => (Math.abs(pulseS - 1.64e-3) < 20e-6 ? 0.11 : 0.01), 4).seen()!;
    expect(seen.meanA).toBeCloseTo(0.01 + 0.1 * (40 / 800), 3);
    expect(seen.placesA[12]).toBeCloseTo(0.11, 2);
    expect(seen.placesA[10]).toBeCloseTo(0.01, 3);
  });
  it('is none when it was a step', () => expect(led(() => 0.01, 0.004).seen()).toBeNull());
});
describe('the horn', () => {
  const p = {
    splineTeeth: 24,
    clockwise: -1 as const,
    seatRad: 3 * degrees,
    readErrorsRad: [0.5 * degrees, 0],
  };
  it('is off by what its tooth leaves, and turns against the shaft where the servo is built so', () => {
    const horn = new ServoHorn(p);
    horn.putOn(0.2);
    expect(horn.read(0.2)).toBeCloseTo(3.5, 9);
    expect(horn.read(0.2 + 10 * degrees)).toBeCloseTo(-7, 9);
  });
  it.each(Array.from({ length: 20 }, (_, k) => k + 1))('of car %i sits within half a tooth', (seed) => {
    const { horn } = drawParameters(seed).servo;
    expect(Math.abs(horn.seatRad / degrees)).toBeLessThanOrEqual(180 / horn.splineTeeth);
    expect([23, 24, 25]).toContain(horn.splineTeeth);
  });
});
describe('truths of a moving servo', () => {
  const car = drawParameters(3);
  // i = (a + b w)/k and V = i R + k w must both hold.
  it('solve both equations of the motor', () => {
    const { currentA, shaftRadS } = runningAt(car, 6, 25);
    const { torqueNmPerA: k, coulombNm, viscousNms, gear } = car.servo;
    const motorRadS = shaftRadS * gear;
    expect(currentA).toBeCloseTo((coulombNm + viscousNms * motorRadS) / k, 12);
    expect((currentA * car.servo.ratedV) / stallA(car.servo, 25) + k * motorRadS).toBeCloseTo(6, 9);
  });
  it('of a limited stall are the power of the limited current over the voltage', () => {
    const servo = { ...car.servo, currentLimitA: 2 };
    const ohm = servo.ratedV / stallA(servo, 25);
    expect(stallPlugA(servo, 6, 25)).toBeCloseTo((4 * ohm) / 6, 9);
    expect(stallPlugA({ ...servo, currentLimitA: 99 }, 6, 25)).toBeCloseTo(6 / ohm, 9);
  });
  it('a limited kind of servo has a label of its own', () => {
    const usual = drawCar(3).car.servo.ratedStallA!;
    const limited = drawCar(3, { 'current-limited-servo': 1 }).car.servo.ratedStallA!;
    expect(limited / usual).toBeCloseTo(0.75 ** 2, 1);
  });
});
