// SPDX-License-Identifier: MIT
// Why does this servo run hot? Ranked causes with probability and the evidence for and against, from whatever checks
// were run, and the check that would tell most next. Pure; the learnt figures stand in servo-model.ts.
import type { Car } from '../parts/part.ts';
import { causes, type Cause } from './causes.ts';
import { evidenceWords } from './evidence-words.ts';
import { features, featuresOf, type CheckFindings, type Features } from './features.ts';
import { nextChecks, type NextCheck } from './next-check.ts';
import { posterior, weightBits } from './posterior.ts';
import { servoModel } from './servo-model.ts';
import type { ServoModel } from './servo-model-form.ts';

export type Likely = 'very likely' | 'possible' | 'unlikely' | 'ruled out';
export interface Evidence {
  readonly check: string;
  /** "It draws 0.18 A at rest, its horn free; usual is 0.006 to 0.026 A." */
  readonly words: string;
  /** Positive speaks for the cause. */
  readonly bits: number;
}
export interface RankedCause {
  readonly cause: Cause;
  readonly probability: number;
  readonly likely: Likely;
  /** The strongest first. */
  readonly evidenceFor: readonly Evidence[];
  readonly evidenceAgainst: readonly Evidence[];
}
export interface Diagnosis {
  readonly ranked: readonly RankedCause[];
  /** Checks that gave evidence. */
  readonly heard: readonly string[];
  readonly next: readonly NextCheck[];
}
/** Words from here on, by probability. */
const words: readonly (readonly [number, Likely])[] = [
  [0.8, 'very likely'],
  [0.2, 'possible'],
  [0.02, 'unlikely'],
];
export const likelyOf = (probability: number): Likely =>
  words.find(([least]) => probability >= least)?.[1] ?? 'ruled out';
/** Whole per cent, never certainty. */
export function chanceWords(probability: number): string {
  const percent = Math.round(100 * probability);
  return percent > 99 ? 'over 99 %' : percent < 1 ? 'below 1 %' : `${percent} %`;
}

/** Evidence that changes the odds by less than a factor of two is not told. */
const leastBits = 1;

export function diagnose(
  runs: readonly CheckFindings[],
  car: Car,
  model: ServoModel = servoModel,
): Diagnosis {
  const known = featuresOf(runs, car);
  const chances = posterior(model, known);
  const ranked = causes
    .map((cause) => ({
      cause,
      probability: chances[cause.id],
      likely: likelyOf(chances[cause.id]),
      ...sides(evidenceOf(model, cause, known)),
    }))
    .toSorted((a, b) => b.probability - a.probability);
  const told = features.filter(({ id }) => known[id] !== undefined);
  return { ranked, heard: [...new Set(told.map(({ check }) => check))], next: nextChecks(model, known) };
}
function evidenceOf(model: ServoModel, cause: Cause, known: Features): Evidence[] {
  return features.flatMap((feature) => {
    const value = known[feature.id];
    if (value === undefined) return [];
    const words = evidenceWords(feature, value, model.features[feature.id].usual);
    return [{ check: feature.check, words, bits: weightBits(model, cause.id, feature.id, value) }];
  });
}
const sides = (all: readonly Evidence[]) => ({
  evidenceFor: all.filter(({ bits }) => bits >= leastBits).toSorted((a, b) => b.bits - a.bits),
  evidenceAgainst: all.filter(({ bits }) => bits <= -leastBits).toSorted((a, b) => a.bits - b.bits),
});
