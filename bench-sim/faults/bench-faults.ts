// SPDX-License-Identifier: MIT
// Faults of the rig itself, its cable and the person at the bench. Data only; how each is made stands elsewhere.
import type { FaultRow } from './fault-row.ts';

export const benchFaults = [
  {
    name: 'open-thermistor',
    title: 'Thermistors open',
    words: 'The thermistors at the motor and at the servo case are open.',
    severity: 'above 0.5: no connection',
    check: 'motor-no-load',
    verdict: 'notMeasured',
    room: 'plant',
  },
  {
    name: 'noisy-cable',
    title: 'Noisy cable',
    words: 'The USB cable drops and garbles bytes on the way to the computer.',
    severity: '1: about four bursts of damage a second while the feed is on; the rate is proportional',
    check: 'rail-sag',
    verdict: 'notMeasured',
    room: 'cable',
  },
  {
    name: 'stop-line-open',
    title: 'Stop line opens',
    words: 'The stop line opens two seconds after the first drive.',
    severity: 'above 0.5: the line opens and stays open',
    check: 'motor-no-load',
    verdict: 'tripped',
    room: 'bench',
  },
] as const satisfies readonly FaultRow[];
