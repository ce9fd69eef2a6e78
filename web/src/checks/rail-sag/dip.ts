// SPDX-License-Identifier: MIT
// Lowest rail voltage from bursts: every conversion of one tap, 104 us apart, with the load step or the servo move fired
// by the rig at a known sample. A dip between two samples is allowed for in the budget.
import { measured, type ResultName } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { NotMeasurable } from '#core/measurements/tap-reading';
import { dipQuantity, lowestOf, stretchOf, wholeWave } from '../burst-wave.ts';
import type { AnalysisInput } from '../check.ts';
import type { Evidence } from './evidence.ts';

type Input = AnalysisInput<Evidence>;

export function dipOf(name: ResultName, input: Input): Finding {
  const bursts = [...input.evidence.loadBursts, ...input.evidence.servoBursts];
  if (bursts.length === 0) throw new NotMeasurable('No burst was recorded. Run again.');
  const waves = bursts.map((burst) => wholeWave(input, burst));
  const lowest = waves.map((wave) => lowestOf(wave)).toSorted((a, b) => a.value - b.value)[0];
  return measured(name, dipQuantity(input, lowest), {
    formula: 'Lowest value of all bursts, half the greatest fall between two samples allowed for as missed.',
    evidence: bursts.map(stretchOf),
    notes: [`Deepest in a burst at ${lowest.value.toFixed(2)} V as read.`],
  });
}
