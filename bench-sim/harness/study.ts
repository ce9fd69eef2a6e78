// SPDX-License-Identifier: MIT
// `npm run study`: runs checks over seeds (and faults) on the emulated firmware, or with --solved on the plant at
// its conversion instants, and says how honest and how tight their intervals are and which verdict each fault got.
import { availableParallelism } from 'node:os';
import { parseArgs } from 'node:util';
import { checks } from '#checks/index';
import { faultTable } from '#sim/faults/faults';
import { BadUsage } from './bad-usage.ts';
import { findCheck } from './check-catalog.ts';
import { seedOf } from './command-arguments.ts';
import { errorDocument, exitCode, exitOfError } from './exit-code.ts';
import { table } from './run-table.ts';
import { cellsOf, type StudyPlan } from './study-cells.ts';
import { runStudy } from './study-crew.ts';
import type { CellOutcome } from './study-run.ts';
import { decisionCounts } from './study-decisions.ts';
import { pooledCoverage, resultSummaries, verdictCounts, type Coverage } from './study-summary.ts';

const usage =
  'Usage: npm run study -- [--checks a,b] [--seeds N] [--first SEED] [--faults all|a,b] [--severities 0,1] [--solved] [--workers N] [--json]';
const defaultSeeds = 20;

function planOf(words: readonly string[]): StudyPlan & { workers: number; solved: boolean; json: boolean } {
  const { values } = parsed(words);
  const wanted = values.checks?.split(',') ?? checks.map(({ id }) => id);
  return {
    checks: wanted.map((id) => findCheck(id).id),
    seeds: values.seeds === undefined ? defaultSeeds : seedOf(values.seeds),
    firstSeed: values.first === undefined ? 1 : seedOf(values.first),
    faults: faultsOf(values.faults),
    severities: (values.severities ?? '0,1').split(',').map(severityAt),
    workers: values.workers === undefined ? availableParallelism() : Math.max(1, seedOf(values.workers)),
    solved: values.solved ?? false,
    json: values.json ?? false,
  };
}
function faultsOf(named = ''): string[] {
  if (named === '') return [];
  const known = faultTable.map(({ name }) => name as string);
  const wanted = named === 'all' ? known : named.split(',');
  const unknown = wanted.find((name) => !known.includes(name));
  if (unknown !== undefined)
    throw new BadUsage('unknownFault', `There is no fault "${unknown}". Faults: ${known.join(', ')}.`);
  return wanted;
}
function severityAt(text: string): number {
  const severity = Number(text);
  if (text.trim() !== '' && severity >= 0 && severity <= 1) return severity;
  throw new BadUsage('badFlag', `"${text}" is no severity: a number from 0 to 1 is needed.`);
}
function parsed(words: readonly string[]) {
  const text = { type: 'string' } as const;
  const flag = { type: 'boolean' } as const;
  const options = {
    checks: text,
    seeds: text,
    first: text,
    faults: text,
    severities: text,
    solved: flag,
    workers: text,
    json: flag,
  };
  try {
    return parseArgs({ args: [...words], options });
  } catch (cause) {
    throw new BadUsage('badFlag', `${(cause as Error).message.split('. ')[0]}.\n${usage}`, { cause });
  }
}
async function main(): Promise<number> {
  const plan = planOf(process.argv.slice(2));
  const date = new Date().toISOString();
  const outcomes = await runStudy(cellsOf(plan), plan, (outcome, done) =>
    process.stderr.write(
      `${done} ${outcome.check} seed ${outcome.seed} ${outcome.verdict} ${outcome.wallS.toFixed(1)} s\n`,
    ),
  );
  const summary = {
    date,
    solved: plan.solved,
    firstSeed: plan.firstSeed,
    seeds: plan.seeds,
    checks: plan.checks,
    pooled: pooledCoverage(outcomes),
    results: resultSummaries(outcomes),
    decisions: decisionCounts(outcomes),
    verdicts: verdictCounts(outcomes),
    speed: speedOf(outcomes),
  };
  process.stdout.write(
    plan.json ? `${JSON.stringify({ ...summary, outcomes }, null, 1)}\n` : textOf(summary),
  );
  return exitCode.pass;
}
/** Rig seconds a second of one worker. */
const speedOf = (outcomes: readonly CellOutcome[]): number =>
  outcomes.reduce((sum, { rigS }) => sum + rigS, 0) / outcomes.reduce((sum, { wallS }) => sum + wallS, 0);

type Summary = {
  date: string;
  solved: boolean;
  firstSeed: number;
  seeds: number;
  pooled: Coverage;
  results: ReturnType<typeof resultSummaries>;
  decisions: ReturnType<typeof decisionCounts>;
  verdicts: ReturnType<typeof verdictCounts>;
  speed: number;
};
function textOf({
  date,
  solved,
  firstSeed,
  seeds,
  pooled,
  results,
  decisions,
  verdicts,
  speed,
}: Summary): string {
  const runs = solved ? 'solved at the conversion instants' : 'on the emulated firmware';
  return [
    `Study of ${date}: seeds ${firstSeed} to ${firstSeed + seeds - 1} ${runs}, ${speed.toFixed(1)} rig seconds a second`,
    '',
    ...(results.length > 0 ? coverageText(results, pooled, decisions) : []),
    ...table([
      ['check', 'fault', 'severity', 'expected', 'got'],
      ...verdicts.map((v) => [v.check, v.fault, String(v.severity), v.expected, countsText(v.counts)]),
    ]),
    '',
    ...verdicts.flatMap((v) => v.reasons.map((reason) => `${v.check} ${v.fault}=${v.severity}: ${reason}`)),
    '',
  ].join('\n');
}
/** Of the cells without faults. */
function coverageText(
  results: Summary['results'],
  pooled: Coverage,
  decisions: Summary['decisions'],
): string[] {
  return [
    ...table([
      ['result', 'truth inside', '95 % bounds', 'half-width', 'worst', 'error/half-width', 'worst', 'values'],
      ...results.map((r) => [
        r.id,
        `${r.inside}/${r.of}`,
        boundsText(r),
        `${r.medianHalfWidthPerCent.toFixed(2)} %`,
        `${r.worstHalfWidthPerCent.toFixed(2)} %`,
        r.medianErrorShare.toFixed(2),
        r.worstErrorShare.toFixed(2),
        `${r.valueRange.map((v) => Number(v.toPrecision(3))).join(' to ')} ${r.unit}`,
      ]),
    ]),
    '',
    `Pooled: ${pooled.inside} of ${pooled.of} inside, ${(100 * pooled.share).toFixed(1)} % (${boundsText(pooled)})`,
    '',
    ...table([
      ['result', 'exactly at its limit: passed', 'inside by two U: undecided', '95 to 98.5 %, Holm'],
      ...decisions.map((d) => [
        d.id,
        `${d.atLimitPassed}/${d.atLimit}`,
        `${d.insideUndecided}/${d.inside}`,
        d.compatible,
      ]),
    ]),
    '',
  ];
}
const boundsText = ({ bounds }: Coverage): string =>
  bounds.map((b) => `${(100 * b).toFixed(1)} %`).join(' to ');
const countsText = (counts: Readonly<Record<string, number>>): string =>
  Object.entries(counts)
    .map(([word, count]) => `${count} ${word}`)
    .join(', ');

try {
  process.exitCode = await main();
} catch (error) {
  process.stderr.write(`${errorDocument(error).error.message}\n`);
  process.exitCode = exitOfError(error);
}
