// SPDX-License-Identifier: MIT
// What was seen of the things that a plan has a person look at: asked at this terminal; on a virtual car, or by
// somebody who has looked beforehand, all is well. It knows words only.
import { createInterface } from 'node:readline/promises';
import type { LookAnswer } from '#checks/plans/outcomes';

export type Looks = (words: string) => Promise<LookAnswer>;

export function looksFor({
  rig,
  scene,
  handsReady,
}: {
  rig: string;
  scene: string | null;
  handsReady: boolean;
}): Looks {
  if (rig === 'virtual' || scene !== null || handsReady) return () => Promise.resolve('fine');
  return process.stdin.isTTY ? askHere : () => Promise.resolve('not looked at');
}
async function askHere(words: string): Promise<LookAnswer> {
  const terminal = createInterface({ input: process.stdin, output: process.stderr });
  const line = await terminal.question(`\n${words}\nIs it so? y: yes, n: no, Enter: not looked at. `);
  terminal.close();
  return answerIn(line);
}
export function answerIn(line: string): LookAnswer {
  const letter = line.trim().toLowerCase()[0];
  return letter === 'y' ? 'fine' : letter === 'n' ? 'not fine' : 'not looked at';
}
