// SPDX-License-Identifier: MIT
// `node --import tsx tests/mutations/run.ts [FIRST [LAST]]`: puts each deliberate fault of the list into a copy of
// the committed tree, one at a time, and runs the unit tests beside it. Prints which were caught; exit 1 if one was
// not, or if the tests fail without any fault.
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { checkMutations } from './check-mutations.ts';
import { coreMutations } from './core-mutations.ts';
import type { Mutation } from './mutation.ts';

const mutations = [...coreMutations, ...checkMutations];
const root = resolve(import.meta.dirname, '../..');
const copy = mkdtempSync(join(tmpdir(), 'bench-marshal-mutations-'));
execFileSync('sh', ['-c', `git -C "${root}" archive HEAD | tar -x -C "${copy}"`]);
symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));

const testsPass = (folder: string): boolean =>
  spawnSync(join(copy, 'node_modules/.bin/vitest'), ['run', '--project', 'unit', folder], { cwd: copy })
    .status === 0;

function caught({ file, find, put, tests }: Mutation): boolean {
  const path = join(copy, file);
  const before = readFileSync(path, 'utf8');
  if (before.split(find).length !== 2)
    throw new Error(`${file}: "${find}" must stand there exactly once. Bring the list up to date.`);
  writeFileSync(
    path,
    before.replace(find, () => put),
  );
  try {
    return !testsPass(tests);
  } finally {
    writeFileSync(path, before);
  }
}
const [first = 1, last = mutations.length] = process.argv.slice(2).map(Number);
const wanted = mutations.slice(first - 1, last);
if (wanted.length === 0)
  throw new RangeError(`The list has 1 to ${mutations.length}; give FIRST and LAST within.`);
const missed: Mutation[] = [];
try {
  for (const folder of new Set(wanted.map(({ tests }) => tests)))
    if (!testsPass(folder)) throw new Error(`The tests of ${folder} fail without any fault.`);
  for (const [k, mutation] of wanted.entries()) {
    const good = caught(mutation);
    if (!good) missed.push(mutation);
    process.stdout.write(
      `${first + k} ${good ? 'caught' : 'MISSED'}: ${mutation.words} (${mutation.file})\n`,
    );
  }
} finally {
  rmSync(copy, { recursive: true });
}
process.stdout.write(`${wanted.length - missed.length} of ${wanted.length} caught\n`);
process.exitCode = missed.length > 0 ? 1 : 0;
