// SPDX-License-Identifier: MIT
// Probabilities of the causes from features: Bayes with each feature on its own (naive), Student's t instead of the
// normal so that one odd value decides nothing alone, all log likelihoods tempered. Absent features say nothing.
import jstat from 'jstat';
import { causeIds, type CauseId } from './causes.ts';
import type { FeatureId, Features } from './features.ts';
import type { ServoModel, Shown, Spread } from './servo-model-form.ts';

export type Probabilities = Readonly<Record<CauseId, number>>;
/** Degrees of freedom of every spread. */
export const tails = 5;

/** Up to a constant: ln of Student's t of `tails`, scaled. */
export function logLikelihood({ middle, spread }: Spread, value: number): number {
  const z = (value - middle) / spread;
  return -((tails + 1) / 2) * Math.log1p((z * z) / tails) - Math.log(spread);
}
/** The same over all servos of a cause: those that show it and those that are as usual. */
export function logLikelihoodOfShown(own: Shown, usual: Spread, value: number): number {
  const shown = own.shows * Math.exp(logLikelihood(own, value));
  return Math.log(shown + (1 - own.shows) * Math.exp(logLikelihood(usual, value)));
}
function logLikelihoodOf(model: ServoModel, feature: FeatureId, cause: CauseId, value: number): number {
  const { usual, causes } = model.features[feature];
  const own = causes[cause];
  return own ? logLikelihoodOfShown(own, usual, value) : logLikelihood(usual, value);
}
export function posterior(model: ServoModel, known: Features): Probabilities {
  const logs = causeIds.map(
    (cause) => Math.log(model.priors[cause]) + model.temper * logOfAll(model, cause, known),
  );
  return normalised(logs);
}
function logOfAll(model: ServoModel, cause: CauseId, known: Features): number {
  let sum = 0;
  for (const [feature, value] of Object.entries(known) as [FeatureId, number][])
    sum += logLikelihoodOf(model, feature, cause, value);
  return sum;
}
function normalised(logs: readonly number[]): Probabilities {
  const most = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - most));
  const whole = weights.reduce((sum, w) => sum + w, 0);
  return Object.fromEntries(causeIds.map((cause, k) => [cause, weights[k] / whole])) as Probabilities;
}
/** What is left open, bits. */
export function openBits(chances: Probabilities): number {
  return Object.values(chances).reduce((sum, p) => (p > 0 ? sum - p * Math.log2(p) : sum), 0);
}
/** For one cause against all others as they stand before any check, bits; positive speaks for it. */
export function weightBits(model: ServoModel, cause: CauseId, feature: FeatureId, value: number): number {
  const others = causeIds.filter((other) => other !== cause);
  const whole = others.reduce((sum, other) => sum + model.priors[other], 0);
  const mixed = others.reduce(
    (sum, other) =>
      sum + (model.priors[other] / whole) * Math.exp(logLikelihoodOf(model, feature, other, value)),
    0,
  );
  const own = logLikelihoodOf(model, feature, cause, value);
  return (model.temper * (own - Math.log(mixed))) / Math.LN2;
}
/** A value of a feature at this share of the way through the servos of a cause, those that show it first. */
export function valueAt(model: ServoModel, feature: FeatureId, cause: CauseId, share: number): number {
  const { usual, causes } = model.features[feature];
  const { shows, ...own } = causes[cause] ?? { ...usual, shows: 1 };
  return share < shows ? quantileOf(own, share / shows) : quantileOf(usual, (share - shows) / (1 - shows));
}
/** A value at this share of the way through a spread. */
export const quantileOf = ({ middle, spread }: Spread, share: number): number =>
  middle + spread * jstat.studentt.inv(share, tails);
