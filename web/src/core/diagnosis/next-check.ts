// SPDX-License-Identifier: MIT
// Which check not run yet would tell most: the bits that its features are expected to close, over what is open now.
// Expected values over evenly spread points, no chance in it.
import { causeIds, type CauseId } from './causes.ts';
import { features, type FeatureId, type Features } from './features.ts';
import { openBits, posterior, valueAt, type Probabilities } from './posterior.ts';
import type { ServoModel } from './servo-model-form.ts';

export interface NextCheck {
  readonly check: string;
  /** Expected to be closed of what is open, bits. */
  readonly bits: number;
}
/** Less than this is not worth a run. */
const leastBits = 0.05;
const pointsEach = 12;
/** Causes below this don't count for what is to be expected. */
const leastChance = 0.005;
/** Bases of Halton's sequence, one for each feature of a check. */
const bases = [2, 3, 5, 7] as const;

/** All checks that would still tell something, the best first. */
export function nextChecks(model: ServoModel, known: Features): NextCheck[] {
  const now = posterior(model, known);
  const missing = features.filter(({ id }) => known[id] === undefined);
  const of = (check: string) => missing.filter((feature) => feature.check === check).map(({ id }) => id);
  return [...new Set(missing.map(({ check }) => check))]
    .map((check) => ({ check, bits: expectedBits(model, known, now, of(check)) }))
    .filter(({ bits }) => bits >= leastBits)
    .toSorted((a, b) => b.bits - a.bits);
}
function expectedBits(
  model: ServoModel,
  known: Features,
  now: Probabilities,
  of: readonly FeatureId[],
): number {
  const likely = causeIds.filter((cause) => now[cause] > leastChance);
  const whole = likely.reduce((sum, cause) => sum + now[cause], 0);
  const left = likely.reduce(
    (sum, cause) => sum + (now[cause] / whole) * openAfter(model, known, cause, of),
    0,
  );
  return openBits(now) - left;
}
/** Mean of what stays open when the servo has this cause. */
function openAfter(model: ServoModel, known: Features, cause: CauseId, of: readonly FeatureId[]): number {
  let sum = 0;
  for (let k = 1; k <= pointsEach; k++) {
    const drawn = of.map((id, j) => [id, valueAt(model, id, cause, halton(k, bases[j]))] as const);
    sum += openBits(posterior(model, { ...known, ...Object.fromEntries(drawn) }));
  }
  return sum / pointsEach;
}
/** The k-th number of the van der Corput sequence in a base. */
function halton(k: number, base: number): number {
  let [share, value] = [1, 0];
  for (let rest = k; rest > 0; rest = Math.floor(rest / base)) {
    share /= base;
    value += share * (rest % base);
  }
  return value;
}
