// SPDX-License-Identifier: MIT
// Faults of motor, its sensors and the drive train. Data only; how each is made stands elsewhere.
import type { FaultRow } from './fault-row.ts';

export const motorFaults = [
  {
    name: 'worn-bearings',
    title: 'Worn bearings',
    words: 'The motor bearings are worn: more friction at every speed.',
    severity: '1: friction torque 2.2 times what it was',
    check: 'motor-no-load',
    verdict: 'fail',
    room: 'plant',
  },
  {
    name: 'weak-rotor',
    title: 'Weak rotor',
    words: 'The rotor magnet has lost flux: the motor turns faster and draws more.',
    severity: '1: 12 % of the flux gone',
    check: 'motor-no-load',
    verdict: 'fail',
    room: 'plant',
  },
  {
    name: 'dead-hall-line',
    title: 'Hall line A dead',
    words: 'Hall line A of the sensor cable is dead: no speed.',
    severity: 'above 0.5: the line stays low',
    check: 'motor-no-load',
    verdict: 'notMeasured',
    room: 'plant',
  },
] as const satisfies readonly FaultRow[];
