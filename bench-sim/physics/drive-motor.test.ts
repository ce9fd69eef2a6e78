// SPDX-License-Identifier: MIT
// The motor model against the identities of the permanent-magnet motor (textbook, from memory), two rows of an
// industrial d.c. motor data sheet (48 V brushed, 12 V brushless; seen in a secondary copy), the closed form
// of an RL circuit, and ngspice (fixtures/README.md).
import { describe, expect, it } from 'vitest';
import { DriveMotor } from './drive-motor.ts';
import { referenceLine, referencePackOhm } from '../../tests/support/reference-line.ts';
import { referenceOutput, valueAt } from '../../tests/support/reference-output.ts';
import type { MotorParameters } from './parameters.ts';
import { drawParameters } from './population.ts';
import { kvRpmPerV, noLoadState } from './steady-state.ts';
import { SupplyLine } from './supply-line.ts';

const stepS = 8e-6;
const rpm = 60 / (2 * Math.PI);
const { motor: anyMotor } = drawParameters(1);

/** A data-sheet row as a motor: k from kn, all of I0 as friction. */
function ofSheet(row: {
  knRpmPerV: number;
  ohm: number;
  mH: number;
  I0: number;
  gcm2: number;
}): MotorParameters {
  const fluxVs = rpm / row.knRpmPerV;
  return {
    ...anyMotor,
    fluxVs,
    windingOhm: row.ohm,
    inductanceH: row.mH * 1e-3,
    inertiaKgM2: row.gcm2 * 1e-7,
    coulombNm: fluxVs * row.I0,
    viscousNms: 0,
    quadraticNms2: 0,
  };
}
const brushed48V = { knRpmPerV: 178, ohm: 2.45, mH: 0.513, I0: 0.0786, gcm2: 34.7 };
const brushless12V = { knRpmPerV: 1070, ohm: 0.248, mH: 0.109, I0: 0.629, gcm2: 10.5 };

const spin = (motor: DriveMotor, seconds: number, busV: number) => {
  for (let k = 0; k < seconds / stepS; k++) motor.step(1, 0, busV);
};

describe('data-sheet rows', () => {
  it('48 V brushed: no-load speed 8490 rpm and current 78.6 mA within 1 %', () => {
    const motor = new DriveMotor(ofSheet(brushed48V), 0, stepS);
    spin(motor, 0.2, 48);
    expect((motor.speedRadS * rpm) / 8490).toBeCloseTo(1, 2);
    expect(motor.currentA / 0.0786).toBeCloseTo(1, 2);
  });
  it.each([
    ['48 V brushed', brushed48V, 48, 19.6, 1050],
    ['12 V brushless', brushless12V, 12, 48.3, 432],
  ] as const)('%s: stall current and torque within 1 %%', (_, row, volt, stallA, stallMilliNm) => {
    const parameters = { ...ofSheet(row), inertiaKgM2: 1e9 };
    const motor = new DriveMotor(parameters, 0, stepS);
    spin(motor, 0.02, volt);
    expect(motor.currentA / stallA).toBeCloseTo(1, 2);
    expect((motor.currentA * parameters.fluxVs * 1e3) / stallMilliNm).toBeCloseTo(1, 2);
  });
  it.each([
    ['48 V brushed', brushed48V, 48, 2.94],
    ['12 V brushless', brushless12V, 12, 3.26],
  ] as const)('%s: mechanical time constant R J/k^2 within 1 %%', (_, row, volt, tauMs) => {
    const parameters = { ...ofSheet(row), coulombNm: 0, inductanceH: 2e-5 };
    const motor = new DriveMotor(parameters, 0, stepS);
    const goal = (1 - Math.exp(-1)) * (volt / parameters.fluxVs);
    let steps = 0;
    for (; motor.speedRadS < goal; steps++) motor.step(1, 0, volt);
    expect((steps * stepS * 1e3) / tauMs).toBeCloseTo(1, 1);
  });
});

it('settles at the current and speed that the steady state computes', () => {
  const { controller } = drawParameters(7);
  const motor = new DriveMotor(anyMotor, controller.driverOhm, stepS);
  spin(motor, 3, 7.4);
  const rest = noLoadState(anyMotor, anyMotor.windingOhm + controller.driverOhm, 7.4);
  expect(motor.currentA).toBeCloseTo(rest.currentA, 4);
  expect(motor.speedRadS * rpm).toBeCloseTo(rest.speedRpm, 1);
  expect(
    (motor.speedRadS * rpm) / (7.4 - motor.currentA * (anyMotor.windingOhm + controller.driverOhm)),
  ).toBeCloseTo(kvRpmPerV(anyMotor), 2);
});

it('held still, its current rises as (V/R)(1 - exp(-R t/L))', () => {
  const motor = new DriveMotor(
    { ...anyMotor, inertiaKgM2: 1e9, windingOhm: 0.03, inductanceH: 30e-6 },
    0,
    stepS,
  );
  for (let k = 1; k <= 500; k++) {
    motor.step(0.1, 0, 8);
    const exact = (0.8 / 0.03) * (1 - Math.exp((-0.03 * k * stepS) / 30e-6));
    expect(Math.abs(motor.currentA - exact)).toBeLessThan(2e-3);
  }
});

it('coasts without current and stops', () => {
  const motor = new DriveMotor(anyMotor, 0.005, stepS);
  spin(motor, 1, 7.4);
  const fast = motor.speedRadS;
  for (let k = 0; k < 0.01 / stepS; k++) motor.step(0, 0, 7.4);
  expect(motor.currentA).toBe(0);
  const slowdown = anyMotor.inertiaKgM2 * ((fast - motor.speedRadS) / 0.01);
  expect(slowdown / motor.lossNm(fast)).toBeCloseTo(1, 1);
  for (let k = 0; k < 10 / stepS; k++) motor.step(0, 0, 7.4);
  expect(motor.speedRadS).toBe(0);
});

it('braking puts current back into the bus', () => {
  const motor = new DriveMotor(anyMotor, 0.005, stepS);
  spin(motor, 1, 7.4);
  for (let k = 0; k < 100; k++) motor.step(0, 0.9, 7.4);
  expect(motor.currentA).toBeLessThan(-5);
  expect(motor.busA).toBeCloseTo(0.1 * motor.currentA, 1);
});

it('spins up with the whole supply as ngspice says', () => {
  const reference = referenceOutput('spin-up');
  const parameters: MotorParameters = {
    ...anyMotor,
    fluxVs: 2.72837e-3,
    windingOhm: 0.035,
    inductanceH: 15e-6,
    inertiaKgM2: 4e-6,
    coulombNm: 0.006,
    viscousNms: 1.6e-6,
    quadraticNms2: 1e-10,
  };
  const motor = new DriveMotor(parameters, 0, stepS);
  const line = new SupplyLine({ ...referenceLine, leakA: 0.12 }, referencePackOhm, stepS);
  let peakA = 0;
  for (let k = 1; k * stepS <= 0.4; k++) {
    motor.step(Math.min(1, (k - 0.5) * stepS * 20), 0, line.busV);
    line.step(8.2, motor.busA, 'full', false, false);
    peakA = Math.max(peakA, line.feedA);
    if (k % 2500 !== 0) continue;
    const at = (column: string) => valueAt(reference.time, reference[column], k * stepS);
    expect(Math.abs(motor.speedRadS - at('v(w)'))).toBeLessThan(0.3);
    expect(Math.abs(motor.currentA - at('motor'))).toBeLessThan(0.015);
    expect(Math.abs(line.feedA - at('feed'))).toBeLessThan(0.015);
  }
  expect(peakA / Math.max(...reference.feed)).toBeCloseTo(1, 2);
});

describe('a brake with gaps', () => {
  const motor = {
    ...anyMotor,
    inductanceH: 20e-6,
    windingOhm: 0,
    coulombNm: 0,
    viscousNms: 0,
    quadraticNms2: 0,
  };
  /** Current after settling while the speed is held. */
  const braking = (brake: number, speedRadS: number) => {
    const held = new DriveMotor({ ...motor, inertiaKgM2: 1e9 }, 0, stepS, 16e3);
    held.speedRadS = speedRadS;
    held.step(0, brake, 8);
    return held;
  };
  const at6V = 6 / motor.fluxVs;
  it('draws the mean of triangles: E D T/L high, D T + E D T/(Vo - E) long, once a period', () => {
    const [brake, periodS] = [0.1, 1 / 16e3];
    const peakA = (6 * brake * periodS) / motor.inductanceH;
    const lastsS = brake * periodS * (1 + 6 / (9 - 6));
    expect(braking(brake, at6V).currentA).toBeCloseTo((-peakA * lastsS) / 2 / periodS, 6);
  });
  it('gives the bus the power that it takes from the shaft', () => {
    const held = braking(0.1, at6V);
    expect((held.busA * 9) / (held.currentA / 2) / 6).toBeCloseTo(1, 6);
  });
  it('is nothing at zero', () => expect(braking(0, at6V).currentA).toBe(0));
});
