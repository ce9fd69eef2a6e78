// SPDX-License-Identifier: MIT
// The servo against the RL closed form, Ohm at stall, ngspice for its free motor (fixtures/README.md), and
// what a position loop must do.
import { describe, expect, it } from 'vitest';
import { referenceOutput, valueAt } from '../../tests/support/reference-output.ts';
import { copperFactor } from './copper.ts';
import type { ServoParameters } from './parameters.ts';
import { drawParameters } from './population.ts';
import { Servo } from './servo.ts';

const stepS = 8e-6;
const plain: ServoParameters = {
  ...drawParameters(1).servo,
  digital: true,
  ratedV: 6,
  copperOhm: 1.4 / copperFactor(25),
  fixedOhm: 0.2,
  inductanceH: 0.4e-3,
  torqueNmPerA: 3e-3,
  inertiaKgM2: 1.2e-8,
  gear: 220,
  coulombNm: 0.36e-3,
  viscousNms: 0.12e-6,
  bandRad: 0.07,
  deadBandRad: 0.006,
  loopS: 0.003,
  centreS: 1.5e-3,
  radPerS: 0.09 * (Math.PI / 180) * 1e6,
  startRad: 0,
};
const pulseOf = (degrees: number) => 1.5e-3 + degrees / 0.09 / 1e6;
function make(changes: Partial<ServoParameters> = {}): Servo {
  const servo = new Servo({ ...plain, ...changes }, stepS);
  servo.setTemperature(25);
  return servo;
}
function run(servo: Servo, seconds: number, pulseS: number | null, volt = 6, each = () => {}): void {
  for (let k = 0; k < Math.round(seconds / stepS); k++) {
    servo.step(volt, pulseS, 25);
    each();
  }
}

it('runs up like ngspice says', () => {
  const reference = referenceOutput('servo-run');
  const servo = make({ loopS: stepS, stopRad: 1e6, radPerS: 1e9 });
  const worst = { A: 0, radS: 0 };
  for (let k = 1; k * stepS < 0.0395; k++) {
    servo.step(6, 2e-3, 25);
    if (k % 50 !== 0) continue;
    worst.A = Math.max(
      worst.A,
      Math.abs(servo.currentA - valueAt(reference.time, reference.motor, k * stepS)),
    );
    worst.radS = Math.max(
      worst.radS,
      Math.abs(servo.speedRadS - valueAt(reference.time, reference['v(w)'], k * stepS)),
    );
  }
  expect(worst.A).toBeLessThan(0.008);
  expect(worst.radS).toBeLessThan(3);
  expect(servo.currentA).toBeCloseTo(valueAt(reference.time, reference.motor, 0.0395), 2);
});

describe('at the block', () => {
  it('draws V/R, rising as (V/R)(1 - exp(-R t/L))', () => {
    const servo = make({ inertiaKgM2: 1e6, loopS: stepS });
    for (let k = 1; k <= 200; k++) {
      servo.step(6, pulseOf(20), 25);
      const exact = (6 / 1.6) * (1 - Math.exp((-1.6 * k * stepS) / 0.4e-3));
      expect(Math.abs(servo.currentA - exact)).toBeLessThan(2e-3);
    }
  });
  it('stands still there with its stall current, and moves on when the block is gone', () => {
    const servo = make();
    run(servo, 0.3, pulseOf(0));
    servo.block();
    run(servo, 0.2, pulseOf(20));
    expect(servo.speedRadS).toBe(0);
    expect(servo.currentA).toBeCloseTo(6 / 1.6, 3);
    expect((servo.hornRad * 180) / Math.PI).toBeLessThan(1);
    servo.free();
    run(servo, 0.3, pulseOf(20));
    expect((servo.hornRad * 180) / Math.PI).toBeCloseTo(20, 0);
  });
  it('holds one way only: the horn leaves it backwards', () => {
    const servo = make();
    servo.block();
    run(servo, 0.4, pulseOf(-30));
    expect((servo.hornRad * 180) / Math.PI).toBeCloseTo(-30, 0);
  });
  it('remembers the winding temperature of the first full push', () => {
    const servo = make();
    servo.block();
    expect(servo.pushStartC).toBeNull();
    run(servo, 0.1, pulseOf(20));
    expect(servo.pushStartC).toBe(25);
  });
  it('creeps away from a loose block until nothing is left to push for', () => {
    const servo = make({ blockCreep: 1.75 / (3.75 * 3e-3 * 220) });
    servo.block();
    run(servo, 0.03, pulseOf(10));
    const early = servo.currentA;
    run(servo, 0.4, pulseOf(10));
    expect(early).toBeGreaterThan(2.5);
    expect(servo.currentA).toBeLessThan(0.7 * early);
  });
});

describe('moving', () => {
  it('does 60 degrees in about a tenth of a second', () => {
    const servo = make();
    run(servo, 0.3, pulseOf(-30));
    let seconds = 0;
    run(servo, 0.4, pulseOf(30), 6, () => {
      if (servo.hornRad < (29 * Math.PI) / 180) seconds += stepS;
    });
    expect(seconds).toBeGreaterThan(0.08);
    expect(seconds).toBeLessThan(0.15);
  });
  it('draws its no-load current on the way and only its electronics at rest', () => {
    const servo = make();
    run(servo, 0.3, pulseOf(-50));
    run(servo, 0.1, pulseOf(50));
    expect(servo.plugA - plain.electronicsA).toBeCloseTo((0.36e-3 + 0.12e-6 * servo.speedRadS) / 3e-3, 1);
    run(servo, 0.4, pulseOf(50));
    expect(servo.plugA).toBe(plain.electronicsA);
  });
  it('draws more than its stall current on a reversal', () => {
    const servo = make();
    run(servo, 0.06, pulseOf(60));
    let peakA = 0;
    run(servo, 0.05, pulseOf(-60), 6, () => (peakA = Math.max(peakA, servo.plugA)));
    expect(peakA).toBeGreaterThan(1.3 * 3.75);
  });
  it('keeps its stops', () => {
    const servo = make({ stopRad: 0.8 });
    run(servo, 0.5, pulseOf(80));
    expect(servo.hornRad).toBeGreaterThan(0.79);
    expect(servo.hornRad).toBeLessThan(0.82);
  });
  it('holds its last target without pulses when digital, lets go when analog', () => {
    const digital = make();
    run(digital, 0.1, pulseOf(0));
    run(digital, 0.3, null);
    const analog = make({ digital: false, loopS: 0.02 });
    run(analog, 0.06, pulseOf(60));
    run(analog, 0.3, null);
    expect(Math.abs(digital.hornRad)).toBeLessThan(0.01);
    expect((analog.hornRad * 180) / Math.PI).toBeLessThan(58);
  });
});

describe('electronics', () => {
  it('chop at their limit and draw the power of it', () => {
    const servo = make({ currentLimitA: 2 });
    servo.block();
    run(servo, 0.2, pulseOf(20));
    expect(servo.currentA).toBe(2);
    expect((servo.plugA - plain.electronicsA) * 6).toBeCloseTo(2 * 2 * 1.6, 3);
  });
  it('of a soft start reach full drive in its time', () => {
    const servo = make({ softStartS: 0.1 });
    servo.block();
    run(servo, 0.053, pulseOf(20));
    expect(servo.currentA).toBeCloseTo(3.75 / 2, 1);
    run(servo, 0.1, pulseOf(20));
    expect(servo.currentA).toBeCloseTo(3.75, 2);
  });
  it('sleep below 3.3 V', () => {
    const servo = make();
    run(servo, 0.1, pulseOf(20), 3);
    expect(servo.hornRad).toBe(0);
    expect(servo.plugA).toBe(0);
  });
});
describe('healthy servos of the population', () => {
  /** Mean current over the idle one, A, once they had 0.4 s to settle. */
  function huntingA(seed: number): number {
    const p = drawParameters(seed).servo;
    const servo = new Servo(p, stepS);
    run(servo, 0.4, 1.5e-3, p.ratedV);
    let sumA = 0;
    run(servo, 0.1, 1.5e-3, p.ratedV, () => (sumA += servo.plugA - p.electronicsA));
    return sumA / Math.round(0.1 / stepS);
  }
  it('come to rest: none of 400 hunts', () =>
    expect(Array.from({ length: 400 }, (_, k) => k + 1).filter((seed) => huntingA(seed) > 0.01)).toEqual([]));
});
