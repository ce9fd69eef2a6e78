// SPDX-License-Identifier: MIT
// `npm run perf`: the benchmarks, each a ratio measured side by side in this run. With --json, standard output is one
// document. Words about what is being measured go to standard error.
import { perfText } from './benchmark.ts';
import { errorDocument, exitCode, exitOfError } from './exit-code.ts';
import { parsePerfArguments } from './perf-arguments.ts';
import { perfDocument, quick, thorough } from './perf-suite.ts';

const words = process.argv.slice(2);
const print = (text: string): void => void process.stdout.write(text);
const tell = (text: string): void => void process.stderr.write(`${text}\n`);
const asJson = (content: unknown): string => `${JSON.stringify(content, null, 2)}\n`;

async function main(): Promise<number> {
  const wanted = parsePerfArguments(words);
  const document = await perfDocument(wanted.quick ? quick : thorough, tell);
  print(wanted.json ? asJson(document) : perfText(document));
  return exitCode.pass;
}
try {
  process.exitCode = await main();
} catch (error) {
  const told = errorDocument(error);
  if (words.includes('--json')) print(asJson(told));
  else tell(told.error.message);
  process.exitCode = exitOfError(error);
}
