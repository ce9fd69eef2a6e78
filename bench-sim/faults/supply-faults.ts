// SPDX-License-Identifier: MIT
// Faults of pack, feed line, capacitor, controller supply and receiver rail. Data only; how each is made stands elsewhere.
import type { FaultRow } from './fault-row.ts';

export const supplyFaults = [
  {
    name: 'soft-rail',
    title: 'Soft rail',
    words: 'The receiver rail is soft: too much resistance between regulator and receiver.',
    severity: '1: source resistance 140 mohm',
    check: 'rail-sag',
    verdict: 'fail',
    room: 'plant',
  },
  {
    name: 'rail-current-limit',
    title: 'Rail gives up early',
    words: 'The regulator of the receiver rail gives up early.',
    severity: '1: current limit at 1.5 A',
    check: 'rail-sag',
    verdict: 'fail',
    room: 'plant',
  },
] as const satisfies readonly FaultRow[];
