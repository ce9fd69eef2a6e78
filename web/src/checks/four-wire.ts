// SPDX-License-Identifier: MIT
// Steps of the pack load with the joint probe at a part: words, waits and the stretches kept. Only the pack load is
// switched; the feed to the controller stays off and nothing can move. Shared by the checks that measure so.
import { z } from 'zod';
import type { LoadStep } from '#core/measurements/load-step';
import type { Bench, ScanPlan, WiringStep } from './check.ts';
import { manualCaution, packCaution, polarityCaution } from './cautions.ts';
import { keepStretch, stretchSchema } from './stretch.ts';

export const loadStepSchema = z.object({
  tap: z.string(),
  off: stretchSchema,
  on: stretchSchema,
  after: stretchSchema,
});
export const fourWirePlan: ScanPlan = {
  fast: ['jointProbe', 'packCurrentWide', 'packVoltage', 'packCurrentNarrow'],
  slow: 'multiplexer',
};
export const fourWireWiring: readonly WiringStep[] = [
  { words: 'Controller switched off. Pack lead through the pack adapter.', tap: 'packVoltage' },
  { words: 'Load clips into the pack load, probe tips into the joint probe; lay both aside.' },
];
export const fourWireCautions = [
  'The pack load gets hot and stands free; I move clips only between two steps and never let a clip touch the pack itself.',
  packCaution,
  polarityCaution,
  manualCaution,
];
/** The pack load rests 9 s between two steps, also after the rig has started. */
const restS = 9.3;
const onS = 1;
const times = { off: 0.35, settle: 0.15, on: 0.75, after: 0.35 } as const;
/** Rig time that one step needs. */
export const stepS = restS + onS + 0.8;
export type ProbeTap = 'jointProbe' | 'jointProbeWide';

/** Runs steps on one bench; keeps the rest between them and the jumper's setting. */
export function loadSteps(bench: Bench) {
  let mayS = restS;
  let jumper: string | undefined;
  return async (tap: ProbeTap): Promise<LoadStep> => {
    const wanted = bench.rig.descriptor.taps.find(({ id }) => id === tap)?.jumper;
    if (wanted !== jumper) await bench.ask(`Set the jumper of the joint probe to ${wanted}.`);
    jumper = wanted;
    await bench.wait(Math.max(0, mayS - times.off - bench.now()));
    const off = await keepStretch(bench, 0.05, times.off);
    await bench.turn('packLoad', true, onS);
    mayS = bench.now() + onS + restS;
    const on = await keepStretch(bench, times.settle, times.on);
    await bench.turn('packLoad', false);
    const after = await keepStretch(bench, 0.3, times.after);
    return { tap, off, on, after };
  };
}
/** True where the probe's range was too small for the step. */
export function wasClipped({ samples }: Bench, { tap, on }: LoadStep): boolean {
  const { value, clipped } = samples.series(tap, on.fromS, on.toS);
  return clipped > value.length / 100;
}
