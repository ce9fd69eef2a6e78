// SPDX-License-Identifier: MIT
// Warming after the exact solution of C dT/dt = P - T/R: 1 - e^-1 of the rise is 0.6321206, 1 - e^-3 0.9502129;
// and for equal intervals rise = (t2^2 - t1 t3)/(2 t2 - t1 - t3), which follows from it.
import { describe, expect, it } from 'vitest';
import { TwoBodyHeat } from '#sim/physics/heat';
import type { CurvePoint } from './curve-fit.ts';
import { seededNoise } from './seeded-noise-fixture.ts';
import { forecast, steadyForecast } from './thermal-forecast.ts';
import { thermalFit } from './thermal-fit.ts';

type Course = (timeS: number) => number;
const oneBody: Course = (timeS) => 20 + 60 * (1 - Math.exp(-timeS / 300));
/** A can warmed from within: it begins level, the fast part counts against the slow one. */
const can: Course = (timeS) =>
  25 + (30 * (400 * (1 - Math.exp(-timeS / 400)) - 20 * (1 - Math.exp(-timeS / 20)))) / 380;

/** Which of the two rose can hardly be told; both together can. */
const twoAlike: Course = (timeS) =>
  25 + 15 * (1 - Math.exp(-timeS / 100)) + 20 * (1 - Math.exp(-timeS / 300));

function measured(course: Course, runS: number, count: number, u: number, noise: () => number): CurvePoint[] {
  return Array.from({ length: count }, (_, k) => {
    const x = (runS * k) / (count - 1);
    return { x, y: course(x) + u * noise(), u };
  });
}
const noiseless = () => 0;
const known = (runS: number) => measured(oneBody, runS, 40, 0.05, noiseless);

describe('thermalFit', () => {
  it('gives start, rise and time constant of one body back from one time constant of run', () => {
    const fit = thermalFit(known(300), 1)!;
    expect(fit.startC).toBeCloseTo(20, 6);
    expect(fit.riseK).toBeCloseTo(60, 6);
    expect(fit.tausS[0]).toBeCloseTo(300, 5);
  });
  it('agrees with the three-point formula for rises of 20, 32 and 39.2 K: 50 K, 1.957615 intervals', () => {
    const tau = 1.957615;
    const points = [0, 1, 2, 3, 4, 5].map((x) => ({ x, y: 50 * (1 - Math.exp(-x / tau)), u: 0.01 }));
    expect(points.slice(1, 4).map(({ y }) => Number(y.toFixed(3)))).toEqual([20, 32, 39.2]);
    const fit = thermalFit(points, 1)!;
    expect(fit.riseK).toBeCloseTo(50, 4);
    expect(fit.tausS[0]).toBeCloseTo(tau, 5);
  });
  it('gives both time constants of a can with a winding in it', () => {
    const fit = thermalFit(measured(can, 900, 60, 0.05, noiseless), 2)!;
    expect(fit.tausS[0]).toBeCloseTo(20, 2);
    expect(fit.tausS[1]).toBeCloseTo(400, 2);
    expect(fit.riseK).toBeCloseTo(30, 3);
  });
  it("gives the plant's can back: rise = power times resistances to air, time constants from its matrix", () => {
    const [c1, r1, c2, r2] = [25, 1.2, 65, 7];
    const body = new TwoBodyHeat({ innerJPerK: c1, betweenKPerW: r1, outerJPerK: c2, toAirKPerW: r2 }, 25);
    const points = Array.from({ length: 90 }, (_, k) => {
      for (let step = 0; step < 1000; step++) body.step(3 * 0.01, 0, 25, 0.01);
      return { x: 10 * (k + 1), y: body.outerC, u: 0.01 };
    });
    const trace = 1 / (r1 * c1) + 1 / (r1 * c2) + 1 / (r2 * c2);
    const determinant = 1 / (r1 * c1 * r2 * c2);
    const root = Math.sqrt(trace ** 2 / 4 - determinant);
    const fit = thermalFit(points, 2)!;
    expect(fit.riseK).toBeCloseTo(3 * r2, 3);
    expect(fit.tausS[0] * (trace / 2 + root)).toBeCloseTo(1, 2);
    expect(fit.tausS[1] * (trace / 2 - root)).toBeCloseTo(1, 4);
  });
  it.each([
    ['one body', oneBody, 1, 450, 71],
    ['two alike', twoAlike, 2, 900, 72],
  ] as const)(
    'tells a standard deviation that is the spread of repeats: %s',
    (_name, course, nodes, runS, seed) => {
      const noise = seededNoise(seed);
      const fits = Array.from({ length: 50 }, () =>
        thermalFit(measured(course, runS, 40, 0.1, noise), nodes)!,
      );
      const mean = fits.reduce((sum, { riseK }) => sum + riseK, 0) / fits.length;
      const spread = Math.sqrt(fits.reduce((sum, { riseK }) => sum + (riseK - mean) ** 2, 0) / 49);
      const said = fits.map(({ uRiseK }) => uRiseK).toSorted((a, b) => a - b)[25];
      expect(said / spread).toBeGreaterThan(0.75);
      expect(said / spread).toBeLessThan(1.3);
    },
  );
  it('is null for a level line and for too few points', () => {
    expect(
      thermalFit(
        measured(() => 20, 300, 40, 0.05, noiseless),
        1,
      ),
    ).toBeNull();
    expect(thermalFit(known(300).slice(0, 3), 1)).toBeNull();
  });
});
describe('forecast', () => {
  it.each([
    [900, 0.1],
    [300, 0.05],
    [120, 0.1],
  ])('covers the truth at three times a run of %i s (noise %f K) 95 times in 100', (runS, u) => {
    const noise = seededNoise(runS);
    const runs = 100;
    const hits = Array.from({ length: runs }, () =>
      forecast(measured(oneBody, runS, 30, u, noise), 1, 3 * runS)!.interval.map(
        (end) => end - oneBody(3 * runS),
      ),
    ).filter(([low, high]) => low <= 0 && high >= 0).length;
    // Three standard deviations below 95 of 100.
    expect(hits).toBeGreaterThanOrEqual(89);
  });
  it('grows wide on a short run: a tenth of a time constant says little of three tenths', () => {
    const width = (runS: number) => {
      const [low, high] = forecast(measured(oneBody, runS, 30, 0.1, seededNoise(5)), 1, 3 * runS)!.interval;
      return high - low;
    };
    expect(width(30)).toBeGreaterThan(8 * width(600));
  });
  it('claims nothing beyond three run lengths', () => {
    expect(forecast(known(300), 1, 901)).toBeNull();
    expect(forecast(known(300), 1, 899)).not.toBeNull();
  });
  it('is too low and too sure where one node is taken for a body of two: the reason for the second', () => {
    const slow: Course = (timeS) => 25 + 15 * (1 - Math.exp(-timeS / 60)) + 30 * (1 - Math.exp(-timeS / 900));
    const points = measured(slow, 300, 40, 0.1, seededNoise(9));
    expect(forecast(points, 1, 900)!.interval[1]).toBeLessThan(slow(900));
    const [low, high] = forecast(points, 2, 900)!.interval;
    expect(low).toBeLessThan(slow(900));
    expect(high).toBeGreaterThan(slow(900));
  });
});
describe('steadyForecast', () => {
  const steady = (runS: number) => {
    const points = measured(oneBody, runS, 40, 0.1, seededNoise(3));
    return steadyForecast(points, thermalFit(points, 1)!);
  };
  it('is told once four time constants lie within the horizon', () =>
    expect(Math.abs(steady(600)!.celsius - 80)).toBeLessThan(0.02 * 60));
  it('is not told from one time constant', () => expect(steady(300)).toBeNull());
});
