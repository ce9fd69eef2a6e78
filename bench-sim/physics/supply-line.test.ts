// SPDX-License-Identifier: MIT
// The supply line against RC and RL closed forms and against ngspice (fixtures/README.md).
import { describe, expect, it } from 'vitest';
import { referenceLine, referencePackOhm } from '../../tests/support/reference-line.ts';
import { referenceOutput, valueAt } from '../../tests/support/reference-output.ts';
import type { SupplyLineParameters } from './parameters.ts';
import { SupplyLine } from './supply-line.ts';

const stepS = 8e-6;
const makeLine = (changes: Partial<SupplyLineParameters> = {}) =>
  new SupplyLine({ ...referenceLine, ...changes }, referencePackOhm, stepS);

describe('full feed', () => {
  it('follows ngspice through a step of 10 A', () => {
    const reference = referenceOutput('supply-step');
    const under = makeLine();
    under.step(8.2, 0, 'full', false, false);
    let worstA = 0;
    for (let k = 2; k <= 50; k++) {
      under.step(8.2, 10, 'full', false, false);
      const trueA = valueAt(reference.time, reference.feed, k * stepS);
      worstA = Math.max(worstA, Math.abs(under.feedA - trueA));
    }
    expect(worstA).toBeLessThan(0.05);
    expect(under.feedA).toBeCloseTo(reference.feed.at(-1)!, 2);
    expect(under.busV).toBeCloseTo(reference['v(a)'].at(-1)!, 3);
  });
  it('settles where Ohm says, and splits the drop at its taps', () => {
    const under = makeLine();
    for (let k = 0; k < 2000; k++) under.step(8.2, 4, 'full', false, false);
    expect(under.packV).toBeCloseTo(8.2 - 4 * 0.02, 6);
    expect(under.controllerV).toBeCloseTo(8.2 - 4 * 0.023, 6);
    expect(under.busV).toBeCloseTo(8.2 - 4 * 0.025, 6);
  });
  it('makes a divider of source and pack load', () => {
    const under = makeLine();
    for (let k = 0; k < 2000; k++) under.step(8.2, 0, 'full', true, false);
    expect(under.packV).toBeCloseTo((8.2 * 0.47) / 0.49, 6);
    expect(under.packA).toBeCloseTo(8.2 / 0.49, 5);
  });
});

describe('limited feed and bleeder', () => {
  it('charges as v = V (1 - exp(-t/RC))', () => {
    const under = makeLine({ startV: 0 });
    const ohm = 10 + 0.02 + 0.002;
    const tauS = (ohm + referenceLine.esrOhm) * referenceLine.capacitanceF;
    const steps = Math.round(tauS / stepS);
    for (let k = 0; k < steps; k++) under.step(8.2, 0, 'limited', false, false);
    const exact = 7.95 * (1 - Math.exp((-steps * stepS) / tauS));
    expect(under.capacitorV).toBeCloseTo(exact, 2);
  });
  it('charges as ngspice charges', () => {
    const reference = referenceOutput('limited-charge');
    const under = makeLine({ startV: 0 });
    for (let k = 0; k < 10000; k++) under.step(8.2, 0, 'limited', false, false);
    expect(Math.abs(under.busV - reference['v(a)'].at(-1)!)).toBeLessThan(2e-3);
  });
  it('empties through 1 kohm as v = V exp(-t/RC)', () => {
    const under = makeLine();
    for (let k = 0; k < 250000; k++) under.step(8.2, 0, 'off', false, true);
    expect(under.busV).toBeCloseTo(8.2 * Math.exp(-2 / 2), 2);
  });
  it('never lets current back through the diode', () => {
    const under = makeLine({ startV: 9 });
    under.step(8.2, 0, 'limited', false, false);
    expect(under.feedA).toBe(0);
  });
});

describe('what lies astray at the posts', () => {
  const settled = (changes: Partial<SupplyLineParameters>) => {
    const under = makeLine({ startV: 0, ...changes });
    for (let k = 0; k < 40_000; k++) under.step(8.2, 0, 'limited', false, false);
    return under;
  };
  const throughOhm = 10 + 0.02 + 0.002 + referenceLine.esrOhm;
  it('a short of 50 mohm stands at the divider with the limited feed, below 0.1 V', () => {
    const under = settled({ shortS: 20 });
    expect(under.capacitorV).toBeCloseTo((7.95 * 0.05) / (throughOhm + 0.05), 2);
  });
  it('diodes the wrong way round hold 1.3 V and what their slope adds', () => {
    const under = settled({ diodeV: 1.3, diodeS: 10 });
    expect(under.capacitorV).toBeCloseTo(1.3 + ((7.95 - 1.3) * 0.1) / (throughOhm + 0.1), 2);
  });
  it('a leak takes its current times the way from the filled voltage', () =>
    expect(settled({ leakA: 0.15 }).capacitorV).toBeCloseTo(7.95 - 0.15 * throughOhm, 2));
  it('stays calm with 47 uF alone', () => {
    const under = settled({ capacitanceF: 47e-6 });
    expect(under.capacitorV).toBeCloseTo(7.95, 3);
  });
});

it('keeps its energy: source = heat + capacitor + inductance', () => {
  const under = makeLine();
  const { inductanceH, capacitanceF, esrOhm } = referenceLine;
  const storedJ = () => (capacitanceF * under.capacitorV ** 2 + inductanceH * under.feedA ** 2) / 2;
  const startJ = storedJ();
  let givenJ = 0;
  for (let k = 0; k < 500; k++) {
    const drawA = k < 250 ? 12 : 2;
    const beforeA = under.feedA;
    const beforeV = under.capacitorV;
    under.step(8.2, drawA, 'full', false, false);
    const meanA = (beforeA + under.feedA) / 2;
    const meanV = (beforeV + under.capacitorV) / 2;
    const heatW = meanA ** 2 * 0.025 + (meanA - drawA) ** 2 * esrOhm;
    const loadW = (meanV + esrOhm * (meanA - drawA)) * drawA;
    givenJ += (8.2 * meanA - heatW - loadW) * stepS;
  }
  expect(storedJ() - startJ).toBeCloseTo(givenJ, 9);
});
