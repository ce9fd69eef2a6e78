// SPDX-License-Identifier: MIT
// Learns the diagnosis of a hot servo on the simulated population.
//   node --import tsx bench-sim/harness/learn-diagnosis.ts cases FILE FIRST EACH HEALTHY   simulates servos
//   node --import tsx bench-sim/harness/learn-diagnosis.ts fit MODEL CASES...              learns from files of them
// Cases take about a quarter of a second of processor each; run two at once on two seeds ranges.
import { readFileSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import { casesFile, casesIn, type CasesFile, type KnownCase } from '#core/diagnosis/cases';
import { causeIds } from '#core/diagnosis/causes';
import { learntFrom } from '#core/diagnosis/learning';
import { seedOf } from './command-arguments.ts';
import { diagnosisCase } from './diagnosis-cases.ts';
import { errorDocument, exitOfError } from './exit-code.ts';
import { BadUsage } from './bad-usage.ts';

const usage =
  'Usage: learn-diagnosis.ts cases FILE FIRST EACH HEALTHY | learn-diagnosis.ts fit MODEL CASES...';
/** Files by their names: where they lay is nobody's business. */
const said = process.argv.slice(2).map((word) => basename(word));
const command = `node --import tsx bench-sim/harness/learn-diagnosis.ts ${said.join(' ')}`;
const date = new Date().toISOString().slice(0, 10);

/** `each` servos of every cause, from `first` on; no seed twice. */
async function simulate(first: number, each: number, healthy: number): Promise<KnownCase[]> {
  const wanted = causeIds.flatMap((cause) =>
    Array.from({ length: cause === 'healthy' ? healthy : each }, () => cause),
  );
  const found: KnownCase[] = [];
  for (const [k, cause] of wanted.entries()) {
    found.push(await diagnosisCase(cause, first + k));
    process.stderr.write(`${k + 1} ${cause} ${found[k].severity.toFixed(2)}\n`);
  }
  return found;
}
/** One servo a line. */
function casesText({ cases, ...head }: CasesFile): string {
  const lines = cases.map((row) => JSON.stringify(row)).join(',\n');
  return `${JSON.stringify(head).slice(0, -1)},\n"cases":[\n${lines}\n]}\n`;
}
function modelText(cases: readonly KnownCase[]): string {
  const model = learntFrom(cases, { date, command });
  return `// SPDX-License-Identifier: MIT
// Written by bench-sim/harness/learn-diagnosis.ts; README.md says how and what from. Not for editing by hand.
import type { ServoModel } from './servo-model-form.ts';

export const servoModel: ServoModel = ${JSON.stringify(model, null, 2)};
`;
}
const readCases = (file: string): KnownCase[] => casesIn(JSON.parse(readFileSync(file, 'utf8')));

async function run([what, ...words]: readonly string[]): Promise<void> {
  if (what === 'cases' && words.length === 4) {
    const [first, each, healthy] = words.slice(1).map((word) => seedOf(word));
    const cases = await simulate(first, each, healthy);
    writeFileSync(words[0], casesText(casesFile(cases, { date, command })));
  } else if (what === 'fit' && words.length >= 2) {
    writeFileSync(words[0], modelText(words.slice(1).flatMap(readCases)));
  } else throw new BadUsage('badFlag', usage);
}
try {
  await run(process.argv.slice(2));
} catch (error) {
  process.stderr.write(`${errorDocument(error).error.message}\n`);
  process.exitCode = exitOfError(error);
}
