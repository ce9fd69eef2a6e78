// SPDX-License-Identifier: MIT
// The benchmarks with few repeats: every one gives a figure, the document fits its schema, and the two cores that
// are timed against each other did the same work.
import { describe, expect, it } from 'vitest';
import { BadUsage } from '../../bench-sim/harness/bad-usage.ts';
import { measure, perfSchema, perfText } from '../../bench-sim/harness/benchmark.ts';
import { parsePerfArguments } from '../../bench-sim/harness/perf-arguments.ts';
import { LockStep } from '../../bench-sim/harness/perf-core.ts';
import { perfDocument, quick } from '../../bench-sim/harness/perf-suite.ts';

describe('the benchmarks', () => {
  it('give one document that fits its schema, and a line each in the table', async () => {
    const document = JSON.parse(JSON.stringify(await perfDocument(quick, () => {}))) as unknown;
    const { benchmarks, machine } = perfSchema.parse(document);
    expect(machine.node).toBe(process.version);
    expect(new Set(benchmarks.map(({ id }) => id)).size).toBe(benchmarks.length);
    expect(benchmarks.map(({ id }) => id)).toEqual([
      'rig-speed-idle',
      'rig-cost-idle',
      'rig-speed-motor',
      'rig-cost-motor',
      'plant-share',
      'rig-speed-burst',
      'rig-cost-burst',
      'core-against-avr8js',
      'decoding',
      'analysis-rail-sag',
      'record-opening',
    ]);
    for (const { repeats } of benchmarks) expect(repeats).toBe(quick.repeats);
    const lines = perfText({ benchmarks, machine }).split('\n');
    for (const { id } of benchmarks) expect(lines.some((line) => line.startsWith(id))).toBe(true);
  });
  it('run both cores to the same memory', () => {
    const both = new LockStep();
    for (let round = 0; round < 5; round++) {
      both.runOwn(500);
      both.runStock(500);
      both.requireSame();
    }
    expect(Array.from(both.own.data)).toEqual(Array.from(both.stock.data));
    const places = new Set<number>();
    for (let round = 0; round < 100; round++) {
      both.runOwn(1);
      places.add(both.own.pc);
    }
    // A firmware caught in one waiting loop would be no fair work.
    expect(places.size).toBeGreaterThan(10);
    expect(() => both.requireSame()).toThrow(/parted/);
  });
  it('are medians with their range, the first turn unseen', async () => {
    const turns = [100, 3, 1, 2];
    const [figure] = await measure(
      [{ id: 'x', title: 'x', of: 'a', against: 'b', ratio: () => turns.shift()! }],
      3,
    );
    expect(figure).toMatchObject({ ratio: 2, spread: [1, 3], repeats: 3 });
  });
  it.each([
    [['--fast'], /Unknown option '--fast'\.\nUsage:/],
    [['now'], /Unexpected argument 'now'/],
    [['--json=yes'], /'--json' does not take an argument/],
  ])('refuse %j', (words, told) => {
    expect(() => parsePerfArguments(words)).toThrow(BadUsage);
    expect(() => parsePerfArguments(words)).toThrow(told);
  });
});
