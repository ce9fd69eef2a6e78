// SPDX-License-Identifier: MIT
// The person of a guided calibration at this terminal: told what to do on standard error, answers by lines of
// standard input, so that a list of numbers can be piped in as well. It knows words and numbers only.
import { createInterface } from 'node:readline';
import { numberIn } from '#core/units/asked-number';
import type { CalibrationHands } from '#session/calibration/calibration-hands';
import { BadUsage } from './bad-usage.ts';

export function personHere(): CalibrationHands & { close(): void } {
  const terminal = createInterface({ input: process.stdin });
  const lines = terminal[Symbol.asyncIterator]();
  const answer = async (words: string, what: string): Promise<string> => {
    process.stderr.write(`\n${words}\n${what} `);
    const { value, done } = await lines.next();
    if (!done) return value as string;
    throw new BadUsage(
      'handsNeeded',
      `Standard input ended where somebody was asked: "${words}" Run this in a terminal, or pipe in one line for each question.`,
    );
  };
  return {
    act: async ({ words }) => void (await answer(words, 'Press Enter when it is done.')),
    read: async ({ words, refused }) =>
      numberIn(await answer(refused ? `${refused} ${words}` : words, 'Number:')),
    close: () => terminal.close(),
  };
}
