// SPDX-License-Identifier: MIT
// `npm run check`: runs one check or plan on a virtual or a real rig and ends with the exit code that says how it
// went. With --json, standard output is one document. This is the place where link, session, check and output meet.
import type { Check, Progress } from '#checks/check';
import { proposalOf } from '#checks/proposal';
import { openPlace } from './bench-place.ts';
import { catalogDocument, catalogText, findRunnable, isPlan } from './check-catalog.ts';
import { parseArguments, type RunArguments } from './command-arguments.ts';
import { exitCode, exitOf } from './exit-code.ts';
import { planAtTheBench } from './plan-command.ts';
import { keepRecord, requireWritable } from './record-file.ts';
import { runDocument } from './run-document.ts';
import { runOne, type RunManner } from './run-one.ts';
import { runText } from './run-table.ts';
import { jsonText, print, runCommand, stopOnInterrupt, tell } from './terminal.ts';

const words = process.argv.slice(2);
const wantsJson = words.includes('--json');

async function main(): Promise<number> {
  const wanted = parseArguments(words);
  if (wanted.command === 'list') {
    print(wanted.json ? jsonText(catalogDocument()) : catalogText());
    return exitCode.pass;
  }
  const found = findRunnable(wanted.check);
  if (wanted.record !== null) requireWritable(wanted.record);
  const manner = { progress: wanted.json ? undefined : tellProgress, signal: stopOnInterrupt() };
  if (!isPlan(found)) return run(wanted, found, manner);
  const { told, code } = await planAtTheBench(found, wanted, { ...manner, tell });
  print(typeof told === 'string' ? told : jsonText(told));
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
  print(wanted.json ? jsonText(runDocument(record, proposalOf(check, record))) : runText(record, check));
  return exitOf(record);
}
/** What the person at the command line got wrong during the run is theirs to read, not a result. */
function throwOn(cause: unknown): void {
  if (cause instanceof Error && cause.name === 'BadUsage') throw cause;
  if (cause instanceof Error && cause.name !== 'RigError') tell(cause.stack ?? cause.message);
}
const tellProgress = ({ step, of, words: told, leftS }: Progress): void =>
  tell(`${of > 0 ? `${step}/${of} ` : ''}${told} (${Math.ceil(leftS)} s)`);

await runCommand(main, wantsJson);
