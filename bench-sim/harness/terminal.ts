// SPDX-License-Identifier: MIT
// What every command of the bench says and hears in a terminal: results on standard output, words for the person on
// standard error, an interrupt as a wish to stop safely.
import { errorDocument, exitOfError } from './exit-code.ts';

export const print = (text: string): void => void process.stdout.write(text);
export const tell = (text: string): void => void process.stderr.write(`${text}\n`);
export const jsonText = (content: unknown): string => `${JSON.stringify(content, null, 2)}\n`;

/** Fires at the first interrupt; a second one ends the process as usual. */
export function stopOnInterrupt(): AbortSignal {
  const stop = new AbortController();
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => stop.abort());
  return stop.signal;
}
/** Runs a command to its exit code; what it throws is told as a document or as a sentence. */
export async function runCommand(main: () => number | Promise<number>, wantsJson: boolean): Promise<void> {
  try {
    process.exitCode = await main();
  } catch (error) {
    const told = errorDocument(error);
    if (wantsJson) print(jsonText(told));
    else tell(told.error.message);
    process.exitCode = exitOfError(error);
  }
}
