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
  {
    name: 'reversed-pack',
    title: 'Pack reversed',
    words: 'The plug of the pack is soldered the wrong way round.',
    severity: 'there or not, above 0',
    check: 'rest-voltage',
    verdict: 'fail',
    result: 'pack-polarity',
    room: 'plant',
  },
  {
    name: 'unequal-cells',
    title: 'Unequal cells',
    words: 'One cell of the pack rests lower than the other.',
    severity: '1: 0.6 V lower',
    check: 'rest-voltage',
    verdict: 'fail',
    result: 'cell-imbalance',
    room: 'plant',
  },
  {
    name: 'flat-pack',
    title: 'Flat pack',
    words: 'The pack was run down too far.',
    severity: '1: 3.15 V a cell at rest',
    check: 'rest-voltage',
    verdict: 'fail',
    result: 'pack-voltage',
    room: 'plant',
  },
] as const satisfies readonly FaultRow[];
