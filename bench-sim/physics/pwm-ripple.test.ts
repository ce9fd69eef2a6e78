// SPDX-License-Identifier: MIT
// The ripple's fundamental against ngspice with the whole pulsed current (fixtures/README.md), by a discrete
// Fourier sum over whole periods of the kept output.
import { expect, it } from 'vitest';
import { referenceOutput } from '../../tests/support/reference-output.ts';
import { drawParameters } from './population.ts';
import { PwmRipple } from './pwm-ripple.ts';

const hertz = 16000;
/** Amplitude of the fundamental in evenly spaced samples over whole periods. */
function fundamental(values: readonly number[], intervalS: number): number {
  let real = 0;
  let imaginary = 0;
  values.forEach((value, k) => {
    real += value * Math.cos(2 * Math.PI * hertz * k * intervalS);
    imaginary += value * Math.sin(2 * Math.PI * hertz * k * intervalS);
  });
  return (2 * Math.hypot(real, imaginary)) / values.length;
}
function ripple(changes: { esrOhm?: number; capacitanceF?: number } = {}): PwmRipple {
  const car = drawParameters(1);
  const line = {
    leadOhm: 0.01,
    feedOhm: 0.005,
    postOhm: 0,
    inductanceH: 0.4e-6,
    capacitanceF: 2e-3,
    esrOhm: 0.012,
  };
  Object.assign(car.line, line, changes);
  car.pack.seriesOhm = 0.01;
  car.controller.pwmHz = hertz;
  return new PwmRipple(car, 0.5e-6);
}

it.each([
  ['pwm-ripple', {}, 'whole'],
  // Edges of 0.1 us on the leads' inductance are too short for the kept steps: the current alone is held.
  ['pwm-ripple-dried', { esrOhm: 0.36, capacitanceF: 1.8e-3 }, 'current'],
] as const)(
  'has the size that ngspice finds at the pack side and at the controller: %s',
  (name, changes, held) => {
    const reference = referenceOutput(name);
    const seen = ripple(changes);
    seen.tick(0.5, 6);
    const packA: number[] = [];
    const controllerV: number[] = [];
    for (let k = 0; k < 500; k++) {
      seen.step();
      packA.push(seen.packA);
      controllerV.push(seen.controllerV);
    }
    const trueA = fundamental(reference.feed.slice(0, 500), 0.5e-6);
    const trueV = fundamental(reference['v(a)'].slice(0, 500), 0.5e-6);
    expect(trueA).toBeGreaterThan(0.5);
    expect(fundamental(packA, 0.5e-6) / trueA).toBeCloseTo(1, 2);
    if (held === 'whole') expect(fundamental(controllerV, 0.5e-6) / trueV).toBeCloseTo(1, 2);
  },
);
it('vanishes at full duty and at none', () => {
  const seen = ripple();
  for (const duty of [0, 1]) {
    seen.tick(duty, 6);
    seen.step();
    expect(seen.packA).toBeCloseTo(0, 12);
  }
});
