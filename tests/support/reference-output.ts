// SPDX-License-Identifier: MIT
// Reads the kept output of the circuit solver that the plant is held against (bench-sim/physics/fixtures/README.md) as columns by name. For tests.
import { readFileSync } from 'node:fs';

export type Columns = Readonly<Record<string, readonly number[]>>;

export function referenceOutput(name: string): Columns {
  const text = readFileSync(new URL(`../../bench-sim/physics/fixtures/${name}.out`, import.meta.url), 'utf8');
  const [head, ...rows] = text.trim().split('\n');
  const names = head.trim().split(/\s+/);
  const values = rows.map((row) => row.trim().split(/\s+/).map(Number));
  return Object.fromEntries(names.map((column, i) => [column, values.map((row) => row[i])]));
}
/** Straight-line interpolation at `x` in a rising `xs`. */
export function valueAt(xs: readonly number[], ys: readonly number[], x: number): number {
  const i = Math.max(
    1,
    xs.findIndex((at) => at >= x),
  );
  return ys[i - 1] + ((ys[i] - ys[i - 1]) * (x - xs[i - 1])) / (xs[i] - xs[i - 1]);
}
