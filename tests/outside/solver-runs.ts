// SPDX-License-Identifier: MIT
// Runs of a circuit solver (ngspice 39.3, netlist and output kept beside the plant) against the plant's own solution:
// a load step of the receiver rail, and the capacitor charged through 10 ohm and a diode. Every step is compared
// beside the models; here are the figures a check would read.
import { RailRegulator } from '#sim/physics/rail-regulator';
import { SupplyLine } from '#sim/physics/supply-line';
import { referenceLine, referencePackOhm } from '../support/reference-line.ts';
import { referenceOutput, valueAt } from '../support/reference-output.ts';
import type { OutsideCase, OutsideCheck } from './outside-check.ts';

const stepS = 8e-6;
const rails = {
  'rail-step': { loopHz: 8000, capacitanceF: 440e-6 },
  'rail-step-slow': { loopHz: 2000, capacitanceF: 220e-6 },
} as const;

/** Rail at the receiver after each step from the moment 1.3 ohm is switched on. */
function railOf(name: keyof typeof rails): number[] {
  const rail = new RailRegulator(
    {
      settingV: 6,
      droopOhm: 0.015,
      wiringOhm: 0.02,
      currentLoopS: 5e-6,
      esrOhm: 0.015,
      limitA: 6,
      dropOutOhm: 0.04,
      efficiency: 0.88,
      standbyA: 0.05,
      ringV: 0,
      ringHz: 1200,
      ...rails[name],
    },
    stepS,
  );
  for (let k = 0; k < 12500; k++) {
    if (k % 125 === 0) rail.tick(true, 1e-3);
    rail.step(8.2, 0, 0);
  }
  return Array.from({ length: 240 }, () => {
    rail.step(8.2, 1 / 1.3, 0);
    return rail.receiverV;
  });
}
function railCases(name: keyof typeof rails): OutsideCase[] {
  const { time, ['v(r)']: volts } = referenceOutput(name);
  const at = (step: number) => valueAt(time, volts, 1e-3 + step * stepS);
  const lowest = Math.min(...Array.from({ length: 240 }, (_, k) => at(k + 1)));
  const rail = railOf(name);
  return [
    { name: `${name}, lowest V`, expected: lowest, got: () => Math.min(...rail), within: 5e-3 },
    { name: `${name}, V after 0.4 ms`, expected: at(50), got: () => rail[49], within: 5e-3 },
    { name: `${name}, V after 1.9 ms`, expected: at(240), got: () => rail[239], within: 1e-3 },
  ];
}
function chargeCases(): OutsideCase[] {
  const { time, ['v(a)']: volts } = referenceOutput('limited-charge');
  const line = new SupplyLine({ ...referenceLine, startV: 0 }, referencePackOhm, stepS);
  const bus = Array.from({ length: 10_000 }, () => {
    line.step(8.2, 0, 'limited', false, false);
    return line.busV;
  });
  return [8, 20, 40, 79].map((ms) => ({
    name: `V after ${ms} ms`,
    expected: valueAt(time, volts, ms * 1e-3),
    got: () => bus[Math.round((ms * 1e-3) / stepS) - 1],
    within: 5e-3,
  }));
}
export const solverRuns: readonly OutsideCheck[] = [
  {
    source: 'ngspice 39.3, rail regulator with a load step',
    code: '`RailRegulator` of the plant',
    cases: [...railCases('rail-step'), ...railCases('rail-step-slow')],
  },
  {
    source: 'ngspice 39.3, capacitor charged through 10 ohm and a diode',
    code: '`SupplyLine` of the plant',
    cases: chargeCases(),
  },
];
