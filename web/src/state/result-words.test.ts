// SPDX-License-Identifier: MIT
// Why a result has no number: its first sentence in a list, cut short on a tag.
import { expect, it } from 'vitest';
import { resultDetail, resultWords, type ResultLine } from './run-summary.ts';

const line: ResultLine = {
  id: 'x',
  title: 'X',
  unit: 'A',
  verdict: 'not measured',
  judged: true,
  reason: 'The can is 6.5 K off the air. Let it rest, then run again.',
};
it('is told', () => {
  expect(resultWords(line)).toBe('The can is 6.5 K off the air.');
  expect(resultDetail(line)).toBe('The can is 6.5 K off th…');
  expect(resultWords({ ...line, reason: undefined })).toBe('No number was made.');
});
