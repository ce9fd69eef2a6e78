// SPDX-License-Identifier: MIT
// Writes the table of README.md beside it from the rows that the tests run. Run: node --import tsx
// tests/outside/write-table.ts (with --check it writes nothing and fails when the table is out of step).
import { readFileSync, writeFileSync } from 'node:fs';
import { allChecks } from './all-checks.ts';
import { agreeingDigits, type OutsideCase, type OutsideCheck } from './outside-check.ts';

const readme = new URL('README.md', import.meta.url);
const [begin, end] = ['<!-- table: write-table.ts -->', '<!-- end of table -->'];
/** Larger groups show the case that agrees least. */
const shownWhole = 3;

const figure = (value: number | null): string =>
  value === null ? 'none' : String(Number(value.toPrecision(10)));
const digits = ({ got, expected }: OutsideCase): number => agreeingDigits(got(), expected);
function row({ source, code, mark }: OutsideCheck, one: OutsideCase, of: string): string {
  const cells = [
    source,
    code,
    one.name + of,
    figure(one.expected),
    figure(one.got()),
    digits(one).toFixed(1),
    mark ?? '',
  ];
  return `| ${cells.join(' | ')} |`;
}
function rows(check: OutsideCheck): string[] {
  const { cases } = check;
  if (cases.length <= shownWhole) return cases.map((one) => row(check, one, ''));
  const least = cases.toSorted((a, b) => digits(a) - digits(b))[0];
  return [row(check, least, ` (least of ${cases.length})`)];
}
function table(): string {
  const head = [
    '| source | run | figure | expected | got | digits | mark |',
    '| --- | --- | --- | --- | --- | --- | --- |',
  ];
  return [...head, ...allChecks.flatMap(rows)].join('\n');
}
const text = readFileSync(readme, 'utf8');
const [before, rest] = text.split(begin);
const after = rest.split(end)[1];
const wanted = `${before}${begin}\n${table()}\n${end}${after}`;
if (!process.argv.includes('--check')) writeFileSync(readme, wanted);
else if (wanted !== text) {
  process.stderr.write('The table is out of step. Run: node --import tsx tests/outside/write-table.ts\n');
  process.exitCode = 1;
}
