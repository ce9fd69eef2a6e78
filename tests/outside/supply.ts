// SPDX-License-Identifier: MIT
// What the supply's checks make of figures from outside: a circuit solver's charge curve (ngspice 39.3, netlist and
// output kept beside the plant).
import { analyse } from '#checks/first-power/analysis';
import { directCurrentOhm } from '#checks/pack-sag/direct-current';
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
/** A pack of 5 Ah and 24 mohm at the very levels of the standard: 0.2 and 1 times its capacity in amperes. */
function standardResistance(): number | null {
  const amps = (t: number) => (t < 1 ? 0 : t < 11 ? 1 : 5);
  const samples = syntheticRun({
    tap: (id, t) => (id === 'packVoltage' ? 8 - 0.024 * amps(t) : id === 'packCurrentWide' ? amps(t) : 0),
    feedOnS: 1,
    endS: 12.2,
    fast: ['packVoltage', 'packCurrentWide', 'controllerVoltage', 'railVoltage'],
  });
  const second = { light: { fromS: 10.5, toS: 10.95 }, heavy: { fromS: 11.5, toS: 12 } };
  const evidence = { free: [], loaded: [], second };
  return directCurrentOhm({ evidence, samples, rig: testRig(), car: marmot }).ohm.value;
}
export const supply: readonly OutsideCheck[] = [
  {
    source: 'ngspice 39.3, 2000 uF charged through 10 ohm and a diode',
    code: '`analyse` of first-power',
    cases: [{ name: 'capacitance, F', expected: 2e-3, got: solverCapacitance, within: 2e-3 * 0.025 }],
  },
  {
    source:
      'IEC 61960-3, d.c. resistance (U1 - U2)/(I2 - I1) after 10 s at 0.2 and 1 s at 1 times the capacity',
    code: '`directCurrentOhm` of pack-sag',
    mark: 'from memory',
    cases: [
      // 7.976 V at 1 A and 7.88 V at 5 A, by hand.
      { name: 'ohm', expected: (7.976 - 7.88) / (5 - 1), got: standardResistance, within: 1e-3 },
    ],
  },
];
