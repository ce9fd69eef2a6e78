// SPDX-License-Identifier: MIT
// Heat against the first-order closed form (1 - e^-k: 0.632, 0.865, ... exact) and a worked case computed for
// it: 20 C start, +60 K, 300 s time constant gives 30.876155, 57.927234, 77.012776 C at 60, 300, 900 s.
import { expect, it } from 'vitest';
import { copperFactor } from './copper.ts';
import { OneBodyHeat, Thermistor, TwoBodyHeat } from './heat.ts';

const stepS = 1e-3;
const repeat = (seconds: number, act: () => void) => {
  for (let k = 0; k < Math.round(seconds / stepS); k++) act();
};

it.each([
  [60, 30.876155],
  [300, 57.927234],
  [900, 77.012776],
])('one body at %d s is at %d C', (seconds, celsius) => {
  const body = new OneBodyHeat(100, 3, 20);
  repeat(seconds, () => body.step(20 * stepS, 20, stepS));
  expect(body.bodyC).toBeCloseTo(celsius, 3);
});

it('two bodies settle at power times resistances', () => {
  const motor = new TwoBodyHeat({ innerJPerK: 25, betweenKPerW: 1.2, outerJPerK: 65, toAirKPerW: 7 }, 25);
  repeat(9000, () => motor.step(6 * stepS, 4 * stepS, 25, stepS));
  expect(motor.outerC).toBeCloseTo(25 + 10 * 7, 2);
  expect(motor.innerC).toBeCloseTo(25 + 10 * 7 + 6 * 1.2, 2);
});

it('two bodies lose no heat: added = stored + given to the air', () => {
  const motor = new TwoBodyHeat({ innerJPerK: 25, betweenKPerW: 1.2, outerJPerK: 65, toAirKPerW: 7 }, 25);
  let lostJ = 0;
  repeat(100, () => {
    lostJ += ((motor.outerC - 25) / 7) * stepS;
    motor.step(24 * stepS, 0, 25, stepS);
  });
  expect(25 * (motor.innerC - 25) + 65 * (motor.outerC - 25) + lostJ).toBeCloseTo(2400, 6);
});

it('a thermistor is late by its lag and short by its gain', () => {
  const sensor = new Thermistor(12, 0.92, 25);
  repeat(12, () => sensor.step(75, 25, stepS));
  expect(sensor.celsius).toBeCloseTo(25 + 0.92 * 50 * 0.6321206, 2);
  repeat(300, () => sensor.step(75, 25, stepS));
  expect(sensor.celsius).toBeCloseTo(25 + 46, 3);
});

it('copper follows the alpha form of IEC 60287-1-1: 1.11790, 1.21615, 1.31440 at 50, 75, 100 C', () => {
  expect([50, 75, 100].map((t) => Number(copperFactor(t).toFixed(5)))).toEqual([1.1179, 1.21615, 1.3144]);
});
