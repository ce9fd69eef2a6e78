// SPDX-License-Identifier: MIT
// `npm run check`: runs one check on a virtual or a real rig and ends with the exit code that says how it went.
// With --json, standard output is one document. This is the place where link, session, check and output meet.
import { runCheck } from '#session/check-runner';
import type { Progress } from '#checks/check';
import { truthOf, withTruth } from '#core/record/virtual-truth';
import { openPlace } from './bench-place.ts';
import { catalogDocument, catalogText, findCheck } from './check-catalog.ts';
import { parseArguments, type RunArguments } from './command-arguments.ts';
import { errorDocument, exitCode, exitOf, exitOfError } from './exit-code.ts';
import { keepRecord, requireWritable } from './record-file.ts';
import { runDocument } from './run-document.ts';
import { runText } from './run-table.ts';

const words = process.argv.slice(2);
const wantsJson = words.includes('--json');

async function main(): Promise<number> {
  const wanted = parseArguments(words);
  if (wanted.command === 'run') return run(wanted);
  print(wanted.json ? document(catalogDocument()) : catalogText());
  return exitCode.pass;
}
async function run(wanted: RunArguments): Promise<number> {
  const check = findCheck(wanted.check);
  if (wanted.record !== null) requireWritable(wanted.record);
  const place = await openPlace(wanted);
  const { session, car, hands } = place;
  const startedAt = new Date().toISOString();
  const label = { id: `${check.id} ${startedAt}`, startedAt, tool: 'command line' };
  for (const note of session.notes) tell(note);
  const { record, stopped } = await runCheck(session, check, {
    car,
    label,
    ask: hands,
    progress: wanted.json ? undefined : tellProgress,
    signal: stopOnInterrupt(),
  });
  for (const { kind, words: told } of record.events) if (kind === 'calibration') tell(told);
  await session.close();
  if (stopped?.cause) throwOn(stopped.cause);
  const kept = withTruth(record, place.virtual ? truthOf(place.virtual) : null);
  if (wanted.record !== null) keepRecord(wanted.record, kept);
  print(wanted.json ? document(runDocument(kept)) : runText(kept, check));
  return exitOf(kept);
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
