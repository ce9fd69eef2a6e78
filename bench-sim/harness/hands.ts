// SPDX-License-Identifier: MIT
// Who does what a check asks for at the bench: the person at this terminal, the scene of a virtual rig, or, with
// --hands-ready, a person who has done it beforehand. It knows words only.
import { createInterface } from 'node:readline/promises';
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
  if (handsReady) return () => Promise.resolve();
  if (process.stdin.isTTY) return askHere;
  return (words) =>
    Promise.reject(
      new BadUsage(
        'handsNeeded',
        `Somebody must do this at the bench: "${words}" This program has no terminal to ask at: run it in one, or give --hands-ready once it is done.`,
      ),
    );
}
async function askHere(words: string): Promise<void> {
  const terminal = createInterface({ input: process.stdin, output: process.stderr });
  await terminal.question(`\n${words}\nPress Enter when it is done. `);
  terminal.close();
}
