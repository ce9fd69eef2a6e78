// SPDX-License-Identifier: MIT
// A rotor with dry friction and drag runs down: w = (w0 + a/b) e^(-b t) - a/b, the solution of dw/dt = -(a + b w).
import { describe, expect, it } from 'vitest';
import { DriveMotor } from '#sim/physics/drive-motor';
import { drawParameters } from '#sim/physics/population';
import { coastDown, coastingSpeed, deceleration, stopsAfterS, turnSpeeds } from './coast-down.ts';
import { seededNoise } from './seeded-noise-fixture.ts';

const [startRadS, friction, drag] = [2000, 900, 0.6];
const speedAt = (timeS: number) => (startRadS + friction / drag) * Math.exp(-drag * timeS) - friction / drag;
const angleAt = (timeS: number) =>
  ((startRadS + friction / drag) * -Math.expm1(-drag * timeS)) / drag - (friction / drag) * timeS;

/** Times of whole turns, by halving. */
function turnTimes(untilS: number, uEdgeS = 0, noise: () => number = () => 0): number[] {
  const turns = Math.floor(angleAt(untilS) / (2 * Math.PI));
  return Array.from({ length: turns + 1 }, (_, k) => {
    let [low, high] = [0, untilS];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (angleAt(middle) < 2 * Math.PI * k) low = middle;
      else high = middle;
    }
    return low + uEdgeS * noise();
  });
}
describe('coastDown', () => {
  const fit = coastDown(turnSpeeds(turnTimes(1), 1, 1e-6))!;
  it('gives friction, drag and speed back from the edges of one second', () => {
    expect(fit.frictionRadS2 / friction).toBeCloseTo(1, 3);
    expect(fit.dragPerS / drag).toBeCloseTo(1, 3);
    const [firstTurnsS] = turnSpeeds(turnTimes(1), 1, 1e-6).map(({ x }) => x);
    expect(fit.startRadS / speedAt(firstTurnsS)).toBeCloseTo(1, 5);
  });
  it('tells the deceleration at a speed and when it stands', () => {
    expect(deceleration(fit, 1500)[0] / (friction + drag * 1500)).toBeCloseTo(1, 5);
    const stops = Math.log1p((drag * startRadS) / friction) / drag;
    expect(stopsAfterS(fit)).toBeCloseTo(stops, 2);
  });
  it('knows the deceleration in the middle well where friction and drag alone are known badly', () => {
    const noise = seededNoise(17);
    const fits = Array.from({ length: 60 }, () =>
      coastDown(turnSpeeds(turnTimes(0.6, 2e-6, noise), 1, 2e-6, 5)),
    ).map((found) => found!);
    const middle = fits.map((found) => deceleration(found, 1700));
    const off = middle.filter(([value, u]) => Math.abs(value - friction - drag * 1700) > 2 * u).length;
    expect(off).toBeLessThanOrEqual(8);
    const [, u] = middle[0];
    expect(u).toBeLessThan(0.3 * Math.sqrt(fits[0].covariance[1][1]));
  });
  it('falls in a straight line without drag and never stands without friction', () => {
    expect(coastingSpeed([100, 10, 0])(3)).toBeCloseTo(70, 9);
    expect(stopsAfterS({ ...fit, startRadS: 100, frictionRadS2: 10, dragPerS: 0 })).toBeCloseTo(10, 9);
    expect(stopsAfterS({ ...fit, frictionRadS2: 0 })).toBe(Number.POSITIVE_INFINITY);
  });
  it('takes a turn of the Hall line for half a turn of a rotor with two pole pairs', () => {
    const [point] = turnSpeeds([0.1, 0.11], 2, 1e-6);
    expect(point.x).toBeCloseTo(0.105, 12);
    expect(point.y).toBeCloseTo(Math.PI / 0.01, 9);
    expect(point.u / point.y).toBeCloseTo((Math.SQRT2 * 1e-6) / 0.01, 12);
  });
  it('is null for too few turns and for a rotor that speeds up', () => {
    const points = turnSpeeds(turnTimes(1), 1, 1e-6);
    expect(coastDown(points.slice(0, 7))).toBeNull();
    expect(coastDown(points.map((point, k) => ({ ...point, y: 1000 + k })))).toBeNull();
  });
  it('with the square of speed agrees with the equation stepped by Runge and Kutta, either sign of b2 - 4 a c', () => {
    for (const [a, b, c] of [
      [900, 0.6, 4e-5],
      [900, 0.05, 4e-4],
    ]) {
      let w = 2000;
      const h = 1e-4;
      const fall = (speed: number) => -(a + b * speed + c * speed ** 2);
      for (let k = 0; k < 5000; k++) {
        const k1 = fall(w);
        const k2 = fall(w + (h / 2) * k1);
        const k3 = fall(w + (h / 2) * k2);
        w += (h / 6) * (k1 + 2 * k2 + 2 * k3 + fall(w + h * k3));
      }
      expect(coastingSpeed([2000, a, b, c])(0.5) / w).toBeCloseTo(1, 9);
    }
  });
  it('gives square drag back where it is asked for', () => {
    const known = [2000, 900, 0.6, 6e-5];
    const points = Array.from({ length: 80 }, (_, k) => ({
      x: k / 100,
      y: coastingSpeed(known)(k / 100),
      u: 1e-3,
    }));
    const found = coastDown(points, 'square')!;
    expect(found.frictionRadS2).toBeCloseTo(900, 3);
    expect(found.dragPerS).toBeCloseTo(0.6, 6);
    expect(found.squarePerRad / 6e-5).toBeCloseTo(1, 5);
    expect(deceleration(found, 1500)[0]).toBeCloseTo(900 + 0.6 * 1500 + 6e-5 * 1500 ** 2, 3);
  });
  it("gives the plant's motor back: its dry and viscous loss over its inertia, from edges every turn", () => {
    const { motor: drawn } = drawParameters(8);
    const p = { ...drawn, quadraticNms2: 0 };
    const stepS = 8e-6;
    const motor = new DriveMotor(p, 0, stepS);
    motor.speedRadS = 2000;
    const edgesS: number[] = [];
    let turns = 0;
    for (let k = 0, angleRad = 0; k < 40_000; k++) {
      motor.step(0, 0, 50);
      angleRad += motor.turnedRad / p.polePairs;
      const past = angleRad / (2 * Math.PI) - turns;
      if (past < 1) continue;
      turns++;
      edgesS.push((k + 1) * stepS - ((past - 1) * 2 * Math.PI) / motor.speedRadS);
    }
    const found = coastDown(turnSpeeds(edgesS, 1, 1e-7))!;
    expect(found.frictionRadS2 / (p.coulombNm / p.inertiaKgM2)).toBeCloseTo(1, 3);
    expect(found.dragPerS / (p.viscousNms / p.inertiaKgM2)).toBeCloseTo(1, 3);
  });
});
