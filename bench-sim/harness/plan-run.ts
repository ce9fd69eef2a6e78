// SPDX-License-Identifier: MIT
// A plan at the command line: its items in order, each outcome kept before the next begins. It picks no order and
// judges nothing; checks/plans does.
import type { Check } from '#checks/check';
import { checkById } from '#checks/index';
import { personS } from '#checks/plans/order';
import type { LookItem, Plan, PlanItem } from '#checks/plans/plan';
import { withOutcome, type PlanOutcome } from '#checks/plans/plan-record';
import { itemsLeft, skipReason, wiringFor, wiringMade } from '#checks/plans/progress';
import type { RunRecord } from '#core/record/run-record';
import { reasonOf } from '#core/record/run-reason';
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
  if (reason !== null) return { outcome: skipped(item.check, reason) };
  return doCheck(place, file, checkById(item.check)!, manner);
}
const skipped = (key: string, words: string): PlanOutcome => ({
  key,
  at: now(),
  kind: 'skipped',
  verdict: 'not measured',
  words,
});
async function lookAt({ id, words, seconds }: LookItem, { look, tell }: PlanManner): Promise<PlanOutcome> {
  tell(`Look: ${words}`);
  const answer = await look(words);
  const verdict = ({ fine: 'pass', 'not fine': 'fail', 'not looked at': 'not measured' } as const)[answer];
  return { key: id, at: now(), kind: 'look', verdict, words: `${words} ${answer}.`, personS: seconds };
}
async function doCheck(place: BenchPlace, file: PlanFile, check: Check, manner: PlanManner): Promise<Done> {
  const wiring = wiringFor(check, wiringMade(file, checkById));
  for (const { words } of wiring) manner.tell(`Wire: ${words}`);
  manner.tell(`${check.title} (${check.id})`);
  let asked = 0;
  const counted = {
    ...place,
    hands: (...ask: Parameters<BenchPlace['hands']>) => (asked++, place.hands(...ask)),
  };
  const { record } = await runOne(counted, check, manner);
  const outcome: PlanOutcome = {
    key: check.id,
    at: now(),
    kind: 'check',
    verdict: record.verdict,
    ending: record.ending.kind,
    words: reasonOf(record) ?? 'passed',
    runId: record.id,
    rigS: rigSeconds(record),
    personS: personS.hold + personS.wiring * wiring.length + personS.ask * asked,
  };
  return { outcome, run: record };
}
/** Rig time from the run's start to its last event, which is the way back to safe. */
const rigSeconds = ({ events }: RunRecord): number => Math.max(0, ...events.map(({ atS }) => atS));
