// SPDX-License-Identifier: MIT
// The words of `npm run study`, parsed and checked. It runs nothing.
import { availableParallelism } from 'node:os';
import { parseArgs } from 'node:util';
import { checks } from '#checks/index';
import { faultTable } from '#sim/faults/faults';
import { BadUsage } from './bad-usage.ts';
import { findCheck } from './check-catalog.ts';
import { seedOf } from './command-arguments.ts';
import type { StudyPlan } from './study-cells.ts';
import type { StudyWay } from './study-run.ts';

export const studyUsage = `Usage:
  npm run study -- [--checks a,b] [--seeds N] [--first SEED] [--solved] [--calibrated] [--faults all|a,b] [--severities 0,1] [--workers N] [--json]
  npm run study -- --pool FILE... [--json]`;
const defaultSeeds = 20;

export interface StudyArguments extends StudyPlan, StudyWay {
  readonly workers: number;
  /** Documents of earlier studies that are summed up instead of running one. */
  readonly pool: readonly string[];
  readonly json: boolean;
}
const text = { type: 'string' } as const;
const flag = { type: 'boolean' } as const;
const options = {
  checks: text,
  seeds: text,
  first: text,
  faults: text,
  severities: text,
  solved: flag,
  calibrated: flag,
  workers: text,
  pool: flag,
  json: flag,
};
const bad = (words: string, cause?: unknown): BadUsage =>
  new BadUsage('badFlag', `${words}\n${studyUsage}`, { cause });

/** Throws BadUsage. */
export function parseStudyArguments(words: readonly string[]): StudyArguments {
  const { values, positionals } = parsed(words);
  const wanted = values.checks?.split(',') ?? checks.map(({ id }) => id);
  if (values.pool && positionals.length === 0) throw bad('--pool takes the files that --json wrote.');
  if (!values.pool && positionals.length > 0) throw bad(`Unexpected argument '${positionals[0]}'.`);
  return {
    checks: wanted.map((id) => findCheck(id).id),
    seeds: values.seeds === undefined ? defaultSeeds : seedOf(values.seeds),
    firstSeed: values.first === undefined ? 1 : seedOf(values.first),
    faults: faultsOf(values.faults),
    severities: (values.severities ?? '0,1').split(',').map(severityAt),
    workers: values.workers === undefined ? availableParallelism() : Math.max(1, seedOf(values.workers)),
    solved: values.solved ?? false,
    calibrated: values.calibrated ?? false,
    pool: values.pool ? positionals : [],
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
function severityAt(word: string): number {
  const severity = Number(word);
  if (word.trim() !== '' && severity >= 0 && severity <= 1) return severity;
  throw new BadUsage('badFlag', `"${word}" is no severity: a number from 0 to 1 is needed.`);
}
function parsed(words: readonly string[]) {
  try {
    return parseArgs({ args: [...words], options, allowPositionals: true });
  } catch (cause) {
    throw bad(`${(cause as Error).message.split('. ')[0]}.`, cause);
  }
}
