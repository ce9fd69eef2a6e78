// SPDX-License-Identifier: MIT
// What the supply's checks make of figures from outside: a circuit solver's charge curve (ngspice 39.3, netlist and
// output kept beside the plant).
import { analyse } from '#checks/first-power/analysis';
import { marmot, syntheticRun } from '#checks/synthetic-run-fixture';
import { testRig } from '#core/samples/scan-block-fixture';
import { referenceOutput, valueAt } from '../support/reference-output.ts';
import type { OutsideCheck } from './outside-check.ts';

const closedS = 2.01;
/** The check's own analysis on the solver's curve, behind the noise and the steps of the converter. */
function solverCapacitance(): number | null {
  const { time, ['v(a)']: volts } = referenceOutput('limited-charge');
  const side = (t: number) => (t < closedS ? 0 : valueAt(time, volts, Math.min(t - closedS, time.at(-1)!)));
  const samples = syntheticRun({
    tap: (id, t) => (id === 'controllerVoltage' ? side(t) : id === 'packVoltage' ? 8.2 : 0),
    feedOnS: 2,
    endS: 2.4,
    fast: ['controllerVoltage', 'packVoltage', 'controllerVoltage', 'packCurrentNarrow'],
  });
  const evidence = {
    rest: { fromS: 0.3, toS: 1.5 },
    empty: null,
    emptied: true,
    charge: { fromS: 1.99, toS: 2.25 },
    filled: { fromS: 2.19, toS: 2.25 },
    standby: null,
  };
  const findings = analyse({ evidence, samples, rig: testRig(), car: marmot });
  const found = findings.find(({ id }) => id === 'capacitance');
  return found?.measured ? found.value : null;
}
export const supply: readonly OutsideCheck[] = [
  {
    source: 'ngspice 39.3, 2000 uF charged through 10 ohm and a diode',
    code: '`analyse` of first-power',
    cases: [{ name: 'capacitance, F', expected: 2e-3, got: solverCapacitance, within: 2e-3 * 0.025 }],
  },
];
