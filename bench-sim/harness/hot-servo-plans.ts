// SPDX-License-Identifier: MIT
// `node --import tsx bench-sim/harness/hot-servo-plans.ts [EACH] [FIRST] [CAUSE...]`: the plan of a hot servo on the
// emulated firmware, EACH cars of every cause (or of those named), as the command line runs it; beside it the same cars
// as the diagnosis was learnt, driven by themselves, told from the same checks. Which cause comes first, and how likely
// it is said to be. A plan takes about a minute of processor.
import { z } from 'zod';
import { planById } from '#checks/plans/index';
import type { Plan } from '#checks/plans/plan';
import { emptyRecord } from '#checks/plans/plan-record';
import { causeIds, type CauseId } from '#core/diagnosis/causes';
import { chanceWords } from '#core/diagnosis/diagnosis';
import { features, featuresOf, type Features } from '#core/diagnosis/features';
import { posterior } from '#core/diagnosis/posterior';
import { servoModel } from '#core/diagnosis/servo-model';
import { openVirtual } from './bench-place.ts';
import { seedOf } from './command-arguments.ts';
import { diagnosisCase, hotServo } from './diagnosis-cases.ts';
import { runPlan } from './plan-run.ts';
import { table } from './run-table.ts';

const [each, first] = [seedOf(process.argv[2] ?? '2'), seedOf(process.argv[3] ?? '71001')];
const named = process.argv.slice(4).map((word) => z.enum(causeIds).parse(word));
const plan = planById('hot-servo') as Plan;

async function onFirmware(cause: CauseId, wantedSeed: number): Promise<Features> {
  const { seed, faults } = hotServo(cause, wantedSeed);
  const place = await openVirtual(seed, faults);
  const begun = { ...emptyRecord(plan.id, place.car.name, new Date().toISOString()), runs: [] };
  const look = () => Promise.resolve('fine' as const);
  const { runs } = await runPlan(place, plan, begun, { look, keep: () => {}, tell: () => {} });
  await place.session.close();
  return featuresOf(runs, place.car);
}
/** What the checks of the plan tell. */
function ofPlan(known: Features): Features {
  const told = features.filter(({ check }) =>
    plan.items.some((item) => item.kind === 'check' && item.check === check),
  );
  return Object.fromEntries(told.flatMap(({ id }) => (known[id] === undefined ? [] : [[id, known[id]]])));
}
function firstOf(known: Features): readonly [CauseId, number] {
  const chances = posterior(servoModel, known);
  const best = causeIds.reduce((a, b) => (chances[b] > chances[a] ? b : a));
  return [best, chances[best]];
}
const rows: string[][] = [];
let [right, same] = [0, 0];
const wanted = Array.from({ length: each }, () => causeIds)
  .flat()
  .map((cause, k) => ({ cause, wantedSeed: first + k }))
  .filter(({ cause }) => named.length === 0 || named.includes(cause));
for (const { cause, wantedSeed } of wanted) {
  const known = await onFirmware(cause, wantedSeed);
  const { seed, severity, features: driven } = await diagnosisCase(cause, wantedSeed);
  const [[here, chance], [there, itsChance]] = [firstOf(known), firstOf(ofPlan(driven))];
  right += here === cause ? 1 : 0;
  same += here === there ? 1 : 0;
  rows.push([
    String(seed),
    cause,
    severity.toFixed(2),
    here,
    chanceWords(chance),
    there,
    chanceWords(itsChance),
  ]);
  process.stderr.write(`${rows.at(-1)?.join(' ')}\n`);
}
const heads = ['seed', 'cause', 'severity', 'first on firmware', '', 'first driven by itself', ''];
process.stdout.write(`${table([heads, ...rows]).join('\n')}
Right cause first on the firmware: ${right} of ${rows.length}. The same cause first both ways: ${same} of ${rows.length}.
`);
