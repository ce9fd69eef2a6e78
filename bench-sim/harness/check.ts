// SPDX-License-Identifier: MIT
// `npm run check`: runs one check or plan on a virtual or a real rig and ends with the exit code that says how it
// went. With --json, standard output is one document. This is the place where link, session, check and output meet.
import type { Check, Progress } from '#checks/check';
import { proposalOf } from '#checks/proposal';
import { openPlace } from './bench-place.ts';
import { catalogDocument, catalogText, findRunnable, isPlan } from './check-catalog.ts';
import { parseArguments, type RunArguments } from './command-arguments.ts';
import { errorDocument, exitCode, exitOf, exitOfError } from './exit-code.ts';
import { planAtTheBench } from './plan-command.ts';
import { keepRecord, requireWritable } from './record-file.ts';
import { runDocument } from './run-document.ts';
import { runOne, type RunManner } from './run-one.ts';
import { runText } from './run-table.ts';

const words = process.argv.slice(2);
const wantsJson = words.includes('--json');

async function main(): Promise<number> {
  const wanted = parseArguments(words);
  if (wanted.command === 'list') {
    print(wanted.json ? document(catalogDocument()) : catalogText());
    return exitCode.pass;
  }
  const found = findRunnable(wanted.check);
  if (wanted.record !== null) requireWritable(wanted.record);
  const manner = { progress: wanted.json ? undefined : tellProgress, signal: stopOnInterrupt() };
  if (!isPlan(found)) return run(wanted, found, manner);
  const { told, code } = await planAtTheBench(found, wanted, { ...manner, tell });
  print(typeof told === 'string' ? told : document(told));
  return code;
}
async function run(wanted: RunArguments, check: Check, manner: RunManner): Promise<number> {
  const place = await openPlace(wanted);
  for (const note of place.session.notes) tell(note);
  const { record, stopped } = await runOne(place, check, manner);
  for (const { kind, words: told } of record.events) if (kind === 'calibration') tell(told);
  await place.session.close();
  if (stopped?.cause) throwOn(stopped.cause);
  if (wanted.record !== null) keepRecord(wanted.record, record);
  print(wanted.json ? document(runDocument(record, proposalOf(check, record))) : runText(record, check));
  return exitOf(record);
}
/** What the person at the command line got wrong during the run is theirs to read, not a result. */
function throwOn(cause: unknown): void {
  if (cause instanceof Error && cause.name === 'BadUsage') throw cause;
  if (cause instanceof Error && cause.name !== 'RigError') process.stderr.write(`${cause.stack}\n`);
}
function stopOnInterrupt(): AbortSignal {
  const stop = new AbortController();
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => stop.abort());
  return stop.signal;
}
const document = (content: unknown): string => `${JSON.stringify(content, null, 2)}\n`;
const print = (text: string): void => void process.stdout.write(text);
const tell = (text: string): void => void process.stderr.write(`${text}\n`);
const tellProgress = ({ step, of, words: told, leftS }: Progress): void =>
  tell(`${of > 0 ? `${step}/${of} ` : ''}${told} (${Math.ceil(leftS)} s)`);

try {
  process.exitCode = await main();
} catch (error) {
  const told = errorDocument(error);
  if (wantsJson) print(document(told));
  else tell(told.error.message);
  process.exitCode = exitOfError(error);
}
