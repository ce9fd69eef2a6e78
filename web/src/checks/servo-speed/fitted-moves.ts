// SPDX-License-Identifier: MIT
// The straight line through length and duration of all moves, and the stretches where the servo ran evenly.
import { linearRegression, standardDeviation } from 'simple-statistics';
import { NotMeasurable } from '#core/measurements/tap-reading';
import { named } from '#core/titles/check-titles';
import type { AnalysisInput } from '../check.ts';
import { moveIn, moveSeries, plateauOf, type Move, type MoveSeries } from '../servo-moves.ts';
import type { Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';
import { steppedLine, type Line } from './stepped-line.ts';

type Kept = Evidence['moves'][number];
export interface FittedMoves {
  readonly moves: readonly Kept[];
  /** Moves there and back. */
  readonly pairs: number;
  /** Seconds a microsecond, its standard uncertainty from the scatter, and seconds at no length. */
  readonly slope: number;
  readonly uSlope: number;
  readonly intercept: number;
  readonly plateauA: number;
  readonly plateaus: readonly Stretch[];
}
/** Moves at least this long tell the plateau: the inrush is a small part of them. */
const longUs = 600;
const fewestMoves = 12;
/** Part of a long move that is even, from its start. */
const evenPart = { from: 0.4, to: 0.95 };

export function fittedMoves({ evidence, samples, car }: AnalysisInput<Evidence>, idleA: number): FittedMoves {
  const all = evidence.moves.map((kept) => ({ kept, series: moveSeries(samples, kept.stretch) }));
  requireRest(all.map(({ series }) => series));
  const long = all.filter(({ kept }) => kept.lengthUs >= longUs);
  if (long.length === 0) throw new NotMeasurable('The run ended before the long moves. Run again.');
  const plateauA = plateauOf(
    long.map(({ series }) => series),
    idleA,
  );
  const found = all.map(({ kept, series }) => ({ kept, move: moveIn(series, idleA, plateauA) }));
  const whole = found.filter((each): each is { kept: Kept; move: Move } => each.move !== null);
  requireMoves(whole.length, all.length);
  const plateaus = whole.filter(({ kept }) => kept.lengthUs >= longUs).map(({ move }) => evenStretch(move));
  requirePlateaus(plateaus);
  return {
    moves: evidence.moves,
    pairs: whole.length / 2,
    plateauA,
    plateaus,
    ...lineThrough(whole, car.servo.digital),
  };
}
/** A servo stands still at the end of a move's stretch; one that swings there by more than this has come to no rest. */
const swingA = 0.06;
const restS = 0.06;
const restlessAtMost = 2;
function requireRest(all: readonly MoveSeries[]): void {
  if (all.filter((series) => swingAtEnd(series) > swingA).length <= restlessAtMost) return;
  throw new NotMeasurable(
    `The servo does not come to rest where its moves end, so no end of a move can be told: it hunts. Run ${named('servo-idle')}; a servo that hunts is changed, or has its feedback track seen to.`,
  );
}
/** Root mean square about the mean, A. */
function swingAtEnd({ timeS, amps }: MoveSeries): number {
  const fromS = (timeS.at(-1) ?? 0) - restS;
  const end = Array.from(amps.slice(timeS.findIndex((t) => t >= fromS)));
  return end.length < 2 ? 0 : standardDeviation(end);
}
function requireMoves(seen: number, made: number): void {
  if (seen >= fewestMoves && seen >= 0.8 * made) return;
  throw new NotMeasurable(
    `Only ${seen} of ${made} moves were seen whole: the servo did not arrive in time, or was held. Free the horn, then run again.`,
  );
}
/** Enough samples for a mean; no servo goes 60 degrees in less than twice that (from memory). */
const shortestPlateauS = 0.035;
function requirePlateaus(plateaus: readonly Stretch[]): void {
  if (plateaus.length > 0 && plateaus.every(({ fromS, toS }) => toS - fromS >= shortestPlateauS)) return;
  throw new NotMeasurable(
    'The servo did not run evenly in its long moves, so its voltage under way is not known. Look whether its horn is free all the way, then run again.',
  );
}
const evenStretch = ({ startS, endS }: Move): Stretch => ({
  fromS: startS + evenPart.from * (endS - startS),
  toS: startS + evenPart.to * (endS - startS),
});
/** A simple servo looks at its pulse once a frame. */
const frameS = 0.02;
function lineThrough(whole: readonly { kept: Kept; move: Move }[], digital: boolean): Line {
  const points = whole.map(({ kept, move }): [number, number] => [kept.lengthUs, move.endS - move.startS]);
  if (!digital) return steppedLine(points, frameS);
  const { m: slope, b: intercept } = linearRegression(points);
  const middle = points.reduce((sum, [x]) => sum + x, 0) / points.length;
  const spread = points.reduce((sum, [x]) => sum + (x - middle) ** 2, 0);
  const scatter = points.reduce((sum, [x, y]) => sum + (y - intercept - slope * x) ** 2, 0);
  // There and back meet the servo's own steps alike: a pair tells no more than one move of it.
  return { slope, intercept, uSlope: Math.sqrt((2 * scatter) / (points.length - 2) / spread) };
}
