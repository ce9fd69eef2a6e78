// SPDX-License-Identifier: MIT
// A plan from the command line: opened or resumed, run, kept, and told as text or as a list of documents.
import { checkById } from '#checks/index';
import type { Plan } from '#checks/plans/plan';
import { emptyRecord } from '#checks/plans/plan-record';
import { planSummary } from '#checks/plans/summary';
import { diagnose } from '#core/diagnosis/diagnosis';
import { diagnosisText } from '#core/diagnosis/diagnosis-text';
import type { Car } from '#core/parts/part';
import { openPlace } from './bench-place.ts';
import type { RunArguments } from './command-arguments.ts';
import { exitCode, exitOf, exitOfPlan } from './exit-code.ts';
import { looksFor } from './looks.ts';
import { readPlanFile, type PlanFile } from './plan-file.ts';
import { runPlan } from './plan-run.ts';
import { keepPlan } from './record-file.ts';
import { runDocument } from './run-document.ts';
import type { RunManner } from './run-one.ts';
import { table } from './run-table.ts';

type Told = RunManner & { readonly tell: (words: string) => void };

export async function planAtTheBench(
  plan: Plan,
  wanted: RunArguments,
  manner: Told,
): Promise<{ told: unknown; code: number }> {
  const place = await openPlace(wanted);
  const begun =
    wanted.resume === null
      ? { ...emptyRecord(plan.id, place.car.name, new Date().toISOString()), runs: [] }
      : readPlanFile(wanted.resume, plan.id, place.car.name);
  const { record } = wanted;
  const keep = (file: PlanFile) => record !== null && keepPlan(record, file);
  const file = await runPlan(place, plan, begun, { ...manner, look: looksFor(wanted), keep });
  await place.session.close();
  return {
    told: wanted.json ? documentsOf(plan, file) : planText(plan, file, place.car),
    code: codeOf(plan, file),
  };
}
/** Runs as their documents; what was looked at, skipped or left as documents without results. */
export function documentsOf(plan: Plan, file: PlanFile): unknown[] {
  const { outcomes, open } = planSummary(plan, file, titleOf);
  const done = outcomes.map(({ key, verdict, words, runId }) => {
    const run = file.runs.find(({ id }) => id === runId);
    return run ? runDocument(run) : { check: key, verdict, reason: words, results: [] };
  });
  const left = open.map((key) => ({ check: key, verdict: 'not measured', reason: 'not done', results: [] }));
  return [...done, ...left];
}
function codeOf(plan: Plan, file: PlanFile): number {
  const { outcomes, open } = planSummary(plan, file, titleOf);
  const codes = outcomes.map(({ verdict, ending = 'done', words }) =>
    exitOf({ verdict, ending: { kind: ending, words } }),
  );
  return exitOfPlan(open.length > 0 ? [...codes, exitCode.undecided] : codes);
}
const titleOf = (key: string): string => checkById(key)?.title ?? key;
const minutes = (seconds: number): string =>
  `${Math.floor(seconds / 60)}:${String(Math.round(seconds % 60)).padStart(2, '0')} min`;

export function planText(plan: Plan, file: PlanFile, car: Car): string {
  const { sentence, outcomes, open, rigS, personS } = planSummary(plan, file, titleOf);
  const rows = outcomes.map(({ key, verdict, words }) => [key, verdict, words]);
  return `${[
    `${plan.title} (${plan.id}): ${file.car}`,
    sentence,
    '',
    ...table([['item', 'verdict', 'what there is to say'], ...rows]),
    ...(open.length > 0 ? ['', `Not done: ${open.join(', ')}.`] : []),
    ...(plan.asksWhy ? ['', ...diagnosisText(diagnose(file.runs, car))] : []),
    '',
    `Rig ${minutes(rigS)}, person about ${minutes(personS)}.`,
  ].join('\n')}\n`;
}
