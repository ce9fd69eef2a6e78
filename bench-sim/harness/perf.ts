// SPDX-License-Identifier: MIT
// `npm run perf`: the benchmarks, each a ratio measured side by side in this run. With --json, standard output is one
// document. Words about what is being measured go to standard error.
import { perfText } from './benchmark.ts';
import { exitCode } from './exit-code.ts';
import { parsePerfArguments } from './perf-arguments.ts';
import { perfDocument, quick, thorough } from './perf-suite.ts';
import { jsonText, print, runCommand, tell } from './terminal.ts';

const words = process.argv.slice(2);

async function main(): Promise<number> {
  const wanted = parsePerfArguments(words);
  const document = await perfDocument(wanted.quick ? quick : thorough, tell);
  print(wanted.json ? jsonText(document) : perfText(document));
  return exitCode.pass;
}
await runCommand(main, words.includes('--json'));
