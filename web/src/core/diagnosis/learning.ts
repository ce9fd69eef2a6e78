// SPDX-License-Identifier: MIT
// From servos with a known cause to the figures of the diagnosis: middle and spread of every feature over servos in
// order, those of a cause where they clearly differ and in how many of its servos they do, and the temper at which the probabilities are honest on cases
// that the spreads were not taken from. Numbers only.
import { mean, sampleStandardDeviation } from 'simple-statistics';
import type { KnownCase } from './cases.ts';
import { causeIds, type CauseId } from './causes.ts';
import { featureIds, type FeatureId } from './features.ts';
import { logLikelihoodOfShown, posterior } from './posterior.ts';
import type { ServoModel, Shown, Spread } from './servo-model-form.ts';

/** What real servos scatter by that the simulated ones don't: a spread is never below this. From memory. */
const leastSpread: Readonly<Record<FeatureId, number>> = {
  'rest-current': 0.3,
  'hunting-current': 0.4,
  'moving-current': 0.15,
  'sweep-current': 0.3,
  'tight-spot': 0.15,
  speed: 0.05,
  'stall-current': 0.05,
  'rail-voltage': 0.015,
  'rail-resistance': 0.15,
  'scrub-share': 0.15,
  'scrub-hold': 0.3,
  'scrub-drop': 0.015,
  'left-right': 0.04,
  'stop-met': 0.15,
};
/** A cause has a spread of its own when its middle lies this many usual spreads away, or it is this much wider. */
const differs = { middle: 0.6, spread: 1.6 } as const;
/** A value this many usual spreads away is not as usual. */
const outsideSpreads = 2;
const fewestCases = 8;
const healthyPrior = 0.2;
/** Never above 1: the least spreads are there to doubt the simulation, and that doubt is not taken back. */
const tempers = Array.from({ length: 17 }, (_, k) => 0.2 + 0.05 * k);

type Learnt = Omit<ServoModel, 'temper'>;
export function learntFrom(cases: readonly KnownCase[], told: { date: string; command: string }): ServoModel {
  return { ...spreadsOf(cases, told), temper: bestTemper(cases, told) };
}
function spreadsOf(
  cases: readonly KnownCase[],
  { date, command }: { date: string; command: string },
): Learnt {
  const seeds = cases.map(({ seed }) => seed % 1_000_000);
  return {
    date,
    command,
    seeds: [Math.min(...seeds), Math.max(...seeds)],
    cases: cases.length,
    priors: priors(),
    features: Object.fromEntries(
      featureIds.map((id) => [id, featureSpreads(cases, id)]),
    ) as Learnt['features'],
  };
}
/** Healthy a fifth, all causes alike: nobody has counted them (no source). */
function priors(): Record<CauseId, number> {
  const each = (1 - healthyPrior) / (causeIds.length - 1);
  return Object.fromEntries(causeIds.map((id) => [id, id === 'healthy' ? healthyPrior : each])) as Record<
    CauseId,
    number
  >;
}
function featureSpreads(cases: readonly KnownCase[], id: FeatureId): Learnt['features'][FeatureId] {
  const usual = spread(valuesOf(cases, 'healthy', id), id);
  if (!usual) throw new RangeError(`too few healthy servos tell ${id}`);
  const own = causeIds.flatMap((cause) => {
    const found = cause === 'healthy' ? null : shownBy(valuesOf(cases, cause, id), usual, id);
    return found ? [[cause, found] as const] : [];
  });
  return { usual, causes: Object.fromEntries(own) };
}
/** Null where the servos of a cause don't clearly differ; else all of them, or those that lie outside the usual and how
 *  many they are, whichever makes what was seen likelier. */
function shownBy(values: readonly number[], usual: Spread, id: FeatureId): Shown | null {
  const all = spread(values, id);
  if (!all || !isOther(all, usual)) return null;
  const outside = values.filter((value) => Math.abs(value - usual.middle) > outsideSpreads * usual.spread);
  const some = spread(outside, id);
  const plain = { ...all, shows: 1 };
  if (!some) return plain;
  const mixed = { ...some, shows: round((outside.length + 0.5) / (values.length + 1)) };
  const likely = (own: Shown) =>
    values.reduce((sum, value) => sum + logLikelihoodOfShown(own, usual, value), 0);
  return likely(mixed) > likely(plain) ? mixed : plain;
}
const valuesOf = (cases: readonly KnownCase[], cause: CauseId, id: FeatureId): number[] =>
  cases.flatMap((one) => (one.cause === cause ? (one.features[id] ?? []) : []));
function spread(values: readonly number[], id: FeatureId): Spread | null {
  if (values.length < fewestCases) return null;
  const found = Math.max(leastSpread[id], sampleStandardDeviation([...values]));
  return { middle: round(mean([...values])), spread: round(found) };
}
const round = (value: number): number => Number(value.toFixed(3));
const isOther = (found: Spread, usual: Spread): boolean =>
  Math.abs(found.middle - usual.middle) > differs.middle * usual.spread ||
  found.spread > differs.spread * usual.spread;

/** The least mean surprise on each half of the cases, learnt from the other half. */
function bestTemper(cases: readonly KnownCase[], told: { date: string; command: string }): number {
  const half = (which: number) => cases.filter(({ seed }) => seed % 2 === which);
  const pairs = [0, 1].map((which) => ({ learnt: spreadsOf(half(1 - which), told), tried: half(which) }));
  const surprise = (temper: number) =>
    pairs.reduce((sum, { learnt, tried }) => sum + meanSurprise({ ...learnt, temper }, tried), 0);
  const found = tempers.map((temper) => [surprise(temper), temper] as const);
  return round(found.reduce((a, b) => (b[0] < a[0] ? b : a))[1]);
}
const meanSurprise = (model: ServoModel, cases: readonly KnownCase[]): number =>
  mean(cases.map(({ cause, features }) => -Math.log(Math.max(1e-12, posterior(model, features)[cause]))));
