// SPDX-License-Identifier: MIT
// Who does what a check asks for at the bench: the person at this terminal, the scene of a virtual rig, or, with
// --hands-ready, a person who has done it beforehand. It knows words and figures only.
import { createInterface } from 'node:readline/promises';
import { askedNumber, type NumberWanted } from '#core/units/asked-number';
import type { Ask } from '#session/bench';
import { BadUsage } from './bad-usage.ts';
import { actInScene } from './scene.ts';

export type Hands = Ask;
interface HandsWanted {
  readonly scene: string | null;
  readonly handsReady: boolean;
}
/** Throws BadUsage when there is nobody to ask. */
export function handsFor({ scene, handsReady }: HandsWanted): Hands {
  if (scene !== null) return (words) => actInScene(scene, words);
  if (handsReady) return readyHands;
  if (process.stdin.isTTY) return askHere;
  return (words) =>
    Promise.reject(
      new BadUsage(
        'handsNeeded',
        `Somebody must do this at the bench: "${words}" This program has no terminal to ask at: run it in one, or give --hands-ready once it is done.`,
      ),
    );
}
/** What was done beforehand is done; a figure can't be known beforehand. */
const readyHands: Ask = async (words, wanted) => {
  if (wanted)
    throw new BadUsage(
      'handsNeeded',
      `A figure must be read at the bench: "${words}" --hands-ready can't give one: run this in a terminal.`,
    );
};
async function askHere(words: string, wanted?: NumberWanted): Promise<number | void> {
  const terminal = createInterface({ input: process.stdin, output: process.stderr });
  const ask = (text: string) => terminal.question(text);
  try {
    if (wanted) return await figureFrom(ask, words, wanted);
    await ask(`\n${words}\nPress Enter when it is done. `);
  } finally {
    terminal.close();
  }
}
/** Asks until it is a number inside the bounds, saying each time what was wrong. */
export async function figureFrom(
  ask: (text: string) => Promise<string>,
  words: string,
  wanted: NumberWanted,
): Promise<number> {
  for (let said = words; ;) {
    const asked = askedNumber(await ask(`\n${said}\nFigure in ${wanted.unit}: `), wanted);
    if (asked.ok) return asked.value;
    said = asked.words;
  }
}
