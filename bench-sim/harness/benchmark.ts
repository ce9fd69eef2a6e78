// SPDX-License-Identifier: MIT
// What a benchmark is, how it is repeated, and the document and table it ends in. A figure is always a ratio of two
// things measured side by side in one run. It knows no rig.
import { availableParallelism } from 'node:os';
import { z } from 'zod';
import { cpuSeconds, referenceLoop } from './cpu-time.ts';
import { table } from './run-table.ts';

export interface Benchmark {
  readonly id: string;
  readonly title: string;
  /** What is divided, and by what. */
  readonly of: string;
  readonly against: string;
  /** Both sides, measured once, next to each other. */
  ratio(): number | Promise<number>;
}
const figure = z.number().positive().finite();
export const measuredSchema = z
  .strictObject({
    id: z.string().regex(/^[a-z0-9-]+$/),
    title: z.string().min(1),
    ratio: figure,
    of: z.string().min(1),
    against: z.string().min(1),
    repeats: z.int().min(1),
    spread: z.tuple([figure, figure]),
  })
  .refine(({ ratio, spread: [least, most] }) => least <= ratio && ratio <= most, 'ratio outside its spread');
export const perfSchema = z.strictObject({
  machine: z.strictObject({
    node: z.string().min(1),
    platform: z.string().min(1),
    cores: z.int().min(1),
    /** Processor seconds of one reference loop, so that runs on different computers can be held together. */
    referenceLoopS: figure,
  }),
  benchmarks: z.array(measuredSchema).min(1),
});
export type Measured = z.infer<typeof measuredSchema>;
export type PerfDocument = z.infer<typeof perfSchema>;

/** One turn unseen, while the compiler warms up; then the median of `repeats` turns and their range. */
export async function measure(benchmarks: readonly Benchmark[], repeats: number): Promise<Measured[]> {
  const ratios = new Map<string, number[]>(benchmarks.map(({ id }) => [id, []]));
  for (let turn = 0; turn <= repeats; turn++)
    for (const benchmark of benchmarks) {
      const ratio = await benchmark.ratio();
      if (turn > 0) ratios.get(benchmark.id)!.push(ratio);
    }
  return benchmarks.map(({ id, title, of, against }) => {
    const sorted = ratios.get(id)!.toSorted((a, b) => a - b);
    const spread: [number, number] = [sorted[0], sorted[sorted.length - 1]];
    return { id, title, ratio: median(sorted), of, against, repeats, spread };
  });
}
const median = (sorted: readonly number[]): number =>
  (sorted[(sorted.length - 1) >> 1] + sorted[sorted.length >> 1]) / 2;

export async function machineOf(): Promise<PerfDocument['machine']> {
  const loops: number[] = [];
  for (let turn = 0; turn < 5; turn++) loops.push(await cpuSeconds(referenceLoop));
  return {
    node: process.version,
    platform: `${process.platform} ${process.arch}`,
    cores: availableParallelism(),
    referenceLoopS: median(loops.toSorted((a, b) => a - b)),
  };
}
export function perfText({ machine, benchmarks }: PerfDocument): string {
  const short = (value: number): string => String(Number(value.toPrecision(3)));
  return [
    `Node ${machine.node} on ${machine.platform}, ${machine.cores} cores; reference loop ${short(machine.referenceLoopS)} s`,
    '',
    ...table([
      ['benchmark', 'ratio', 'from .. to', 'repeats', 'of', 'against'],
      ...benchmarks.map(({ id, ratio, spread, repeats, of, against }) => [
        id,
        short(ratio),
        spread.map(short).join(' .. '),
        String(repeats),
        of,
        against,
      ]),
    ]),
    '',
  ].join('\n');
}
