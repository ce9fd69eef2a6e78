// SPDX-License-Identifier: MIT
// Faults of radio, receiver and the controller's idea of the throttle. Data only; how each is made stands elsewhere.
import type { FaultRow } from './fault-row.ts';

export const controlFaults = [
  {
    name: 'crossed-channels',
    title: 'Channels crossed',
    words: 'Steering and throttle are plugged into the wrong channels of the receiver.',
    severity: 'above 0.5: crossed',
    check: 'radio-range',
    verdict: 'fail',
    result: 'wheel-channel',
    room: 'plant',
  },
  {
    name: 'reversed-throttle',
    title: 'Throttle reversed',
    words: 'The throttle channel of the radio is reversed: full throttle gives the shortest pulse.',
    severity: 'above 0.5: reversed',
    check: 'radio-range',
    verdict: 'fail',
    result: 'throttle-travel',
    room: 'plant',
  },
  {
    name: 'bad-joint',
    title: 'Bad joint',
    words: 'A solder joint in the lead to the controller is cold: too much resistance.',
    severity: '1: 2 mΩ more',
    check: 'joint-drop',
    verdict: 'fail',
    result: 'worst-joint',
    room: 'plant',
  },
  {
    name: 'unbalanced-winding',
    title: 'Winding unbalanced',
    words: 'One of the three windings of the motor has too much resistance, as with a bad joint at its post.',
    severity: '1: 30 % more in that winding',
    check: 'winding-balance',
    verdict: 'fail',
    result: 'winding-spread',
    room: 'plant',
  },
  {
    name: 'unlearnt-throttle-range',
    title: 'Range not learnt',
    words: 'The speed controller was never taught the range of this radio and waits for longer pulses.',
    severity: '1: its range is 35 % longer than what it gets',
    check: 'throttle-range',
    verdict: 'fail',
    result: 'throttle-full-at',
    room: 'plant',
  },
  {
    name: 'no-fail-safe',
    title: 'No fail-safe',
    words:
      'The receiver goes on with the last throttle when the transmitter is off, and begins with it on return.',
    severity: '1: for 4 s longer than usual, and for 0.4 s on return; between: proportionally',
    check: 'failsafe',
    verdict: 'fail',
    result: 'throttle-after-loss',
    room: 'plant',
  },
] as const satisfies readonly FaultRow[];
