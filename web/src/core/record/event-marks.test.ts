// SPDX-License-Identifier: MIT
// What is marked on the charts of a run, and in what order.
import { expect, it } from 'vitest';
import { withEventMarks } from './event-marks.ts';

it('marks going live and a trip among the marks of the procedure, and nothing else that happened', () => {
  const marks = [{ atS: 24.2, label: 'greatest load step' }];
  const events = [
    { atS: 0.97, kind: 'state', words: 'live' },
    { atS: 1.02, kind: 'feed', words: 'feed full' },
    { atS: 25.1, kind: 'trip', words: 'over-current on pack current' },
    { atS: 25.1, kind: 'state', words: 'tripped' },
  ];
  expect(withEventMarks(marks, events)).toEqual([
    { atS: 0.97, label: 'live' },
    { atS: 24.2, label: 'greatest load step' },
    { atS: 25.1, label: 'trip' },
  ]);
});
