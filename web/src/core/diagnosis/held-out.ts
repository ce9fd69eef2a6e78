// SPDX-License-Identifier: MIT
// How good a diagnosis is on servos whose cause is known: how often the right cause comes first, Brier's score, and
// whether a probability of so much comes true so often. Numbers only.
import type { KnownCase } from './cases.ts';
import { causeIds, type CauseId } from './causes.ts';
import { posterior, type Probabilities } from './posterior.ts';
import type { ServoModel } from './servo-model-form.ts';

export interface ReliabilityRow {
  readonly from: number;
  readonly to: number;
  /** Pairs of servo and cause whose probability lay there, their mean, and how many came true. */
  readonly pairs: number;
  readonly mean: number;
  readonly came: number;
}
export interface Skill {
  readonly cases: number;
  readonly rightFirst: number;
  /** Brier (1950), over all causes: 0 is perfect, 2 the worst. */
  readonly brier: number;
  /** Cases of each cause, and how many had it first. */
  readonly byCause: Readonly<Record<CauseId, readonly [cases: number, right: number]>>;
  readonly reliability: readonly ReliabilityRow[];
}
/** The words' own borders and some between. */
const borders = [0, 0.02, 0.1, 0.2, 0.5, 0.8, 0.95, 1] as const;

export function skillOf(model: ServoModel, cases: readonly KnownCase[]): Skill {
  const tried = cases.map(({ cause, features }) => ({ cause, chances: posterior(model, features) }));
  const right = tried.filter(({ cause, chances }) => firstOf(chances) === cause);
  const count = (all: typeof tried, cause: CauseId) => all.filter((one) => one.cause === cause).length;
  return {
    cases: cases.length,
    rightFirst: right.length,
    brier: tried.reduce((sum, { cause, chances }) => sum + brierOf(chances, cause), 0) / cases.length,
    byCause: Object.fromEntries(
      causeIds.map((cause) => [cause, [count(tried, cause), count(right, cause)]]),
    ) as unknown as Skill['byCause'],
    reliability: borders.slice(1).map((to, k) => rowOf(tried, borders[k], to)),
  };
}
const firstOf = (chances: Probabilities): CauseId =>
  causeIds.reduce((a, b) => (chances[b] > chances[a] ? b : a));
const brierOf = (chances: Probabilities, truth: CauseId): number =>
  causeIds.reduce((sum, cause) => sum + (chances[cause] - (cause === truth ? 1 : 0)) ** 2, 0);

function rowOf(
  tried: readonly { cause: CauseId; chances: Probabilities }[],
  from: number,
  to: number,
): ReliabilityRow {
  const within = (p: number) => p >= from && (p < to || to === 1);
  const inside = tried.flatMap(({ cause, chances }) =>
    causeIds.map((id) => ({ p: chances[id], came: id === cause })).filter(({ p }) => within(p)),
  );
  return {
    from,
    to,
    pairs: inside.length,
    mean: inside.reduce((sum, { p }) => sum + p, 0) / Math.max(1, inside.length),
    came: inside.filter(({ came }) => came).length,
  };
}
