// SPDX-License-Identifier: MIT
// Faults of servo, horn and linkage. Data only; how each is made stands elsewhere.
import type { FaultRow } from './fault-row.ts';

export const servoFaults = [
  {
    name: 'failing-servo-motor',
    title: 'Servo motor failing',
    words: 'The servo motor is failing: worn brushes and windings let too little current through.',
    severity: '1: stall current down to 60 %',
    check: 'servo-stall',
    verdict: 'fail',
    room: 'plant',
  },
  {
    name: 'block-loose',
    title: 'Block loose',
    words: 'The block the servo horn rests against is loose and gives way.',
    severity:
      '1: gives way at 100 degrees a second under the full stall torque; between: proportionally slower',
    check: 'servo-stall',
    verdict: 'notMeasured',
    room: 'plant',
  },
] as const satisfies readonly FaultRow[];
