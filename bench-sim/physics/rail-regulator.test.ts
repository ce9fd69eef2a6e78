// SPDX-License-Identifier: MIT
// The receiver rail against ngspice (fixtures/README.md) and against Ohm at rest.
import { describe, expect, it } from 'vitest';
import { referenceOutput, valueAt } from '../../tests/support/reference-output.ts';
import type { RailParameters } from './parameters.ts';
import { RailRegulator } from './rail-regulator.ts';

const stepS = 8e-6;
const plain: RailParameters = {
  settingV: 6,
  droopOhm: 0.015,
  wiringOhm: 0.02,
  loopHz: 8000,
  currentLoopS: 5e-6,
  capacitanceF: 440e-6,
  esrOhm: 0.015,
  limitA: 6,
  dropOutOhm: 0.04,
  efficiency: 0.88,
  standbyA: 0.05,
  ringV: 0,
  ringHz: 1200,
};
function settled(parameters: RailParameters, busV = 8.2): RailRegulator {
  const rail = new RailRegulator(parameters, stepS);
  for (let k = 0; k < 12500; k++) {
    if (k % 125 === 0) rail.tick(true, 1e-3);
    rail.step(busV, 0, 0);
  }
  return rail;
}
const run = (rail: RailRegulator, steps: number, bankS: number, busV = 8.2) => {
  for (let k = 0; k < steps; k++) rail.step(busV, bankS, 0);
};

describe.each([
  ['rail-step', {}, 0.01],
  ['rail-step-slow', { loopHz: 2000, capacitanceF: 220e-6 }, 0.01],
  ['rail-step-limited', { limitA: 3 }, 0.01],
] as const)('%s', (name, changes, toleranceV) => {
  it('follows ngspice within the tolerance at every step', () => {
    const reference = referenceOutput(name);
    const rail = settled({ ...plain, ...changes });
    let worstV = 0;
    for (let k = 1; k <= 249; k++) {
      rail.step(8.2, 1 / 1.3, 0);
      const trueV = valueAt(reference.time, reference['v(r)'], 1e-3 + k * stepS);
      worstV = Math.max(worstV, Math.abs(rail.receiverV - trueV));
    }
    expect(worstV).toBeLessThan(toleranceV);
    expect(rail.receiverV).toBeCloseTo(valueAt(reference.time, reference['v(r)'], 2.99e-3), 2);
  });
});

it('dips as deep as ngspice says', () => {
  const reference = referenceOutput('rail-step-slow');
  const rail = settled({ ...plain, loopHz: 2000, capacitanceF: 220e-6 });
  let lowestV = Infinity;
  for (let k = 0; k < 200; k++) {
    rail.step(8.2, 1 / 1.3, 0);
    lowestV = Math.min(lowestV, rail.receiverV);
  }
  const trueDipV = 6 - Math.min(...reference['v(r)']);
  expect((6 - lowestV) / trueDipV).toBeGreaterThan(0.99);
  expect((6 - lowestV) / trueDipV).toBeLessThan(1.01);
});

describe('at rest', () => {
  it('has the source resistance of droop and wiring', () => {
    const rail = settled(plain);
    const emptyV = rail.receiverV;
    const emptyA = rail.loadA;
    run(rail, 5000, 1 / 4.7);
    expect((emptyV - rail.receiverV) / (rail.loadA - emptyA)).toBeCloseTo(0.035, 5);
  });
  it('gives no more than its limit', () => {
    const rail = settled({ ...plain, limitA: 1.5 });
    run(rail, 5000, 1 / 1.3);
    expect(rail.loadA).toBeCloseTo(1.5, 3);
  });
  it('drops out below a low bus and takes its input power over its efficiency', () => {
    const rail = settled(plain, 5);
    run(rail, 5000, 1 / 4.7, 5);
    expect(rail.capacitorV).toBeCloseTo(5 - 0.04 * rail.loadA, 3);
    expect(rail.inputA(5) * 5 * 0.88).toBeCloseTo(rail.capacitorV * rail.inductorA, 9);
  });
});
