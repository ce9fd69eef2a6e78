// SPDX-License-Identifier: MIT
// Runs the circuit solver again on every netlist that the plant is held against, and compares what it gives with the
// kept output. Run: node --import tsx bench-sim/harness/netlists.ts [--write]   (needs ngspice)
import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const kept = join(import.meta.dirname, '../physics/fixtures');
/** Of a column's span: another version may step elsewhere, a changed netlist differs by more. */
const accepted = 1e-3;

function rowsOf(path: string): number[][] {
  const [, ...lines] = readFileSync(path, 'utf8').trim().split('\n');
  return lines.map((line) => line.trim().split(/\s+/).map(Number));
}
/** Largest difference of any column over its span; the first column is time. */
function worstShare(path: string, other: string): number {
  const [old, fresh] = [rowsOf(path), rowsOf(other)];
  if (old.length !== fresh.length) return Number.POSITIVE_INFINITY;
  const shares = old[0].map((_, column) => {
    const values = old.map((row) => row[column]);
    const span = values.reduce((most, v) => Math.max(most, v), -Infinity) - Math.min(...values);
    const apart = fresh.reduce((most, row, k) => Math.max(most, Math.abs(row[column] - values[k])), 0);
    return apart / (span || 1);
  });
  return Math.max(...shares);
}
function solve(name: string, folder: string): string {
  copyFileSync(join(kept, `${name}.cir`), join(folder, `${name}.cir`));
  try {
    execFileSync('ngspice', ['-b', `${name}.cir`], { cwd: folder, stdio: ['ignore', 'ignore', 'ignore'] });
  } catch (error) {
    // Batch mode answers 1 after a good run that plots nothing; the output file tells.
    if ((error as NodeJS.ErrnoException).code === 'ENOENT')
      throw new Error('ngspice is missing: apt-get install ngspice', { cause: error });
  }
  return join(folder, `${name}.out`);
}
function main(): void {
  const folder = mkdtempSync(join(tmpdir(), 'netlists-'));
  const write = process.argv.includes('--write');
  const names = readdirSync(kept)
    .filter((file) => file.endsWith('.cir'))
    .map((file) => file.slice(0, -4));
  for (const name of names) {
    const fresh = solve(name, folder);
    const old = join(kept, `${name}.out`);
    const worst = worstShare(old, fresh);
    process.stdout.write(`${name}: differs by ${worst.toExponential(1)} of its span\n`);
    if (write) copyFileSync(fresh, old);
    else if (!(worst <= accepted)) process.exitCode = 1;
  }
  rmSync(folder, { recursive: true });
}
try {
  main();
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 2;
}
