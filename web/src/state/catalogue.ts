// SPDX-License-Identifier: MIT
// Waits until the bench has told its checks, which it does soon after it is woken: a file can be opened before.
import type { Bench } from './bench.svelte.ts';

const everyMs = 50;
/** A busy computer takes its time; then the file's check counts as not known. */
const patienceMs = 60_000;

export async function catalogueTold(bench: Pick<Bench, 'checks' | 'wake'>): Promise<void> {
  bench.wake();
  for (let waitedMs = 0; bench.checks.length === 0 && waitedMs < patienceMs; waitedMs += everyMs)
    await new Promise((done) => setTimeout(done, everyMs));
}
