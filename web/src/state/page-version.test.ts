// SPDX-License-Identifier: MIT
// A newer version of the page: offered when one waits, never while a run goes on, used only when asked.
import { describe, expect, it } from 'vitest';
import { PageVersion } from './page-version.svelte.ts';

function waiting() {
  const bench = { busy: false, taken: 0, newer: () => {}, stored: () => {} };
  const door = {
    onStored: (act: () => void) => void (bench.stored = act),
    onNewer: (act: () => void) => void (bench.newer = act),
    takeOver: () => void bench.taken++,
  };
  return { bench, version: new PageVersion(door, () => bench.busy) };
}

describe('version of the page', () => {
  it('is offered when a newer one waits, and used when asked', () => {
    const { bench, version } = waiting();
    version.use();
    expect([version.offered, bench.taken]).toEqual([false, 0]);
    bench.newer();
    expect([version.offered, bench.taken]).toEqual([true, 0]);
    version.use();
    expect(bench.taken).toBe(1);
  });
  it('is neither offered nor used while a run goes on', () => {
    const { bench, version } = waiting();
    bench.newer();
    bench.busy = true;
    version.use();
    expect([version.offered, bench.taken]).toEqual([false, 0]);
  });
  it('says whether the page is kept, and that it is not where the browser keeps none', () => {
    const { bench, version } = waiting();
    expect(version.stored).toBe(false);
    bench.stored();
    expect(version.stored).toBe(true);
    expect(new PageVersion(null, () => false).stored).toBe(false);
  });
});
