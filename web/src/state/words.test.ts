// SPDX-License-Identifier: MIT
// Progress in words: a pause, and a check that only listens.
import { expect, it } from 'vitest';
import { progressWords } from './words.ts';

it.each([
  [{ step: 2, of: 6, leftS: 7.2 }, true, 'Live. Step 2 of 6, 8\u00a0s left.'],
  [{ step: 2, of: 6, leftS: 7.2 }, false, 'Step 2 of 6, 8\u00a0s left.'],
  [{ step: 0, of: 0, leftS: -1 }, true, 'Live. 0\u00a0s left.'],
  [{ step: 0, of: 0, leftS: 3 }, false, '3\u00a0s left.'],
])('%o, live %s: %s', (progress, live, words) => expect(progressWords(progress, live)).toBe(words));
