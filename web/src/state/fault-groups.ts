// SPDX-License-Identifier: MIT
// The virtual rig's faults in the groups of the panel, with a short name for a switch.
import { faultTable, type FaultEntry, type FaultName } from '#sim/faults/faults';

export interface FaultCard {
  readonly name: FaultName;
  readonly title: string;
  readonly words: string;
  readonly severity: string;
}
const groups: readonly (readonly [string, readonly (readonly [FaultName, string])[]])[] = [
  [
    'Motor',
    [
      ['worn-bearings', 'Worn bearings'],
      ['weak-rotor', 'Weak rotor'],
      ['dead-hall-line', 'Hall line A dead'],
    ],
  ],
  [
    'Servo',
    [
      ['failing-servo-motor', 'Servo motor failing'],
      ['block-loose', 'Block loose'],
    ],
  ],
  [
    'Controller',
    [
      ['soft-rail', 'Soft rail'],
      ['rail-current-limit', 'Rail gives up early'],
    ],
  ],
  [
    'Rig',
    [
      ['open-thermistor', 'Thermistors open'],
      ['noisy-cable', 'Noisy cable'],
      ['stop-line-open', 'Stop line opens'],
    ],
  ],
];
const entry = (name: FaultName): FaultEntry => faultTable.find((each) => each.name === name)!;

export const faultGroups = groups.map(([title, faults]) => ({
  title,
  faults: faults.map(([name, short]): FaultCard => {
    const { words, severity } = entry(name);
    return { name, title: short, words, severity };
  }),
}));
