// SPDX-License-Identifier: MIT
// A plan at the command line: its items in order, each outcome kept before the next begins. It picks no order and
// judges nothing; checks/plans does.
import type { Check } from '#checks/check';
import { checkById } from '#checks/index';
import { checkOutcome, lookOutcome, runEnd, skippedOutcome } from '#checks/plans/outcomes';
import type { LookItem, Plan, PlanItem } from '#checks/plans/plan';
import { withOutcome, type PlanOutcome } from '#checks/plans/plan-record';
import { itemsLeft, skipReason, wiringFor, wiringMade } from '#checks/plans/progress';
import { wiringWords } from '#checks/wiring';
import type { RunRecord } from '#core/record/run-record';
import type { BenchPlace } from './bench-place.ts';
import type { Looks } from './looks.ts';
import type { PlanFile } from './plan-file.ts';
import { runOne, type RunManner } from './run-one.ts';

export interface PlanManner extends RunManner {
  readonly look: Looks;
  /** Called after every item. */
  readonly keep: (file: PlanFile) => void;
  readonly tell: (words: string) => void;
}
const now = (): string => new Date().toISOString();

/** Ends early when the link is lost or the person stops; what is left then can be resumed. */
export async function runPlan(
  place: BenchPlace,
  plan: Plan,
  begun: PlanFile,
  manner: PlanManner,
): Promise<PlanFile> {
  let file = begun;
  for (const item of itemsLeft(plan, begun, checkById)) {
    const { outcome, run } = await doItem(place, file, item, manner);
    file = { ...withOutcome(file, outcome), runs: run ? [...file.runs, run] : file.runs };
    manner.keep(file);
    if (outcome.ending === 'link lost' || outcome.ending === 'stopped') break;
    if (outcome.ending === 'tripped') await place.session.clearTrip();
  }
  return file;
}
interface Done {
  readonly outcome: PlanOutcome;
  readonly run?: RunRecord;
}
async function doItem(place: BenchPlace, file: PlanFile, item: PlanItem, manner: PlanManner): Promise<Done> {
  if (item.kind === 'look') return { outcome: await lookAt(item, manner) };
  const reason = skipReason(item, place.session.rig, checkById);
  if (reason !== null) return { outcome: skippedOutcome(item.check, reason, now()) };
  return doCheck(place, file, checkById(item.check)!, manner);
}
async function lookAt(item: LookItem, { look, tell }: PlanManner): Promise<PlanOutcome> {
  tell(`Look: ${item.words}`);
  return lookOutcome(item, await look(item.words), now());
}
async function doCheck(place: BenchPlace, file: PlanFile, check: Check, manner: PlanManner): Promise<Done> {
  const wiring = wiringFor(check, wiringMade(file, checkById));
  for (const step of wiring) manner.tell(wiringWords(step));
  manner.tell(`${check.title} (${check.id})`);
  let asked = 0;
  const counted = {
    ...place,
    hands: (...ask: Parameters<BenchPlace['hands']>) => (asked++, place.hands(...ask)),
  };
  const { record } = await runOne(counted, check, manner);
  const counts = { wiring: wiring.length, asked };
  const outcome = checkOutcome(runEnd(record), { check: check.id, runId: record.id, at: now(), ...counts });
  return { outcome, run: record };
}
