// SPDX-License-Identifier: MIT
// A gear train as textbooks work it: driver over driven, stage by stage.
import { finalDriveRatio } from '#core/gearing/gearing';
import { printed, type OutsideCheck } from './outside-check.ts';

export const gearTrain: readonly OutsideCheck[] = [
  {
    source:
      'R. S. Khurmi and J. K. Gupta, Theory of Machines, example 13.1 (chapter and number from memory; the task with its teeth stands in many exam collections): motor at 975 rpm, gears 20-50, 25-75, 26-65',
    code: 'core/gearing/gearing.ts',
    cases: [
      {
        name: 'speed of the last gear, rpm',
        expected: 52,
        got: () =>
          975 / finalDriveRatio({ pinionTeeth: 20, spurTeeth: 50, internalRatio: (75 / 25) * (65 / 26) }),
        within: printed(6),
      },
    ],
  },
];
