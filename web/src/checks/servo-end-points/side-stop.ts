// SPDX-License-Identifier: MIT
// One side's stop: every look's knee, the tightest of them as the side's end point with its budget.
import { noStopMet } from '#core/diagnosis/no-stop';
import { named } from '#core/titles/check-titles';
import type { EvidenceStretch } from '#core/measurements/measurement';
import { uncertain, type Quantity } from '#core/measurements/quantity';
import { clockLine, rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { SampleStore } from '#core/samples/sample-store';
import { freeLevel, meanA } from './bind-watch.ts';
import { outwardOf, type Evidence, type Hitch, type KeptStep, type Search, type Side } from './evidence.ts';
import { kneeOf, lagUs, type Knee } from './knee.ts';

export interface FoundStop {
  readonly hitch: Hitch;
  /** Pulse width of the stop in true us. */
  readonly widthUs: Quantity;
  readonly evidence: readonly EvidenceStretch[];
}
/** What is needed of a run. */
export interface Input {
  readonly evidence: Pick<Evidence, 'searches'>;
  readonly samples: Pick<SampleStore, 'clock' | 'series'>;
}
const neutralUs = 1500;
/** Friction stops a servo short of its target, and the stop gives before it holds: half-width, us, at least, and as a
 *  share of that lag; from the model. */
const leastFrictionUs = 4;
const lagShare = 0.75;
/** Steps that tell the stop, and how many of a walk's last may be pressed. */
const nearest = 8;
const pressedAtMost = 4;

export function stopOf(input: Input, side: Side): FoundStop {
  const looks = input.evidence.searches.filter((search) => search.side === side);
  if (looks.length === 0) throw new NotMeasurable('The run ended before this side. Run again.');
  const knees = looks.map((look) => ({ look, knee: kneeIn(input, look) }));
  const tightest = knees.reduce((a, b) => (b.knee.outUs < a.knee.outUs ? b : a));
  return {
    hitch: tightest.look.hitch,
    widthUs: widthOf(input, side, tightest.knee),
    evidence: stepsOf(tightest.look),
  };
}
type LookKnee = Knee & { readonly frictionUs: number };
function kneeIn(input: Input, look: Search): LookKnee {
  if (!look.met) throw new NotMeasurable(restless(input, look) ?? notMet(look));
  const levelsA = look.steps.map(({ stretch }) => meanA(input.samples, stretch));
  const idleA = meanA(input.samples, look.still);
  const free = freeLevel(levelsA.slice(0, -pressedAtMost));
  const points = look.steps.map((step, k) => ({ outUs: outUs(step), risenA: levelsA[k] - idleA }));
  const freeA = free.middleA - idleA;
  return {
    ...kneeOf(points.slice(-nearest), freeA),
    frictionUs: Math.max(leastFrictionUs, lagShare * lagUs(freeA)),
  };
}
/** A servo whose free current swings by more than this hides every stop. */
const swingA = 0.1;
function restless({ samples }: Input, { steps }: Search): string | null {
  if (steps.length === 0) return null;
  const { middleA, boundA } = freeLevel(steps.map(({ stretch }) => meanA(samples, stretch)));
  if (boundA - middleA < swingA) return null;
  return `The current of the free servo swung too much for a stop to be seen in it: the servo hunts, or its gears are rough. Run ${named('servo-idle')} first.`;
}
function notMet({ side, hitch, steps }: Search): string {
  const furthest = Math.round(Math.max(...steps.map(outUs), 0));
  return `${noStopMet} within ${furthest} µs on the side of ${side}er pulses, ${hitch}: the linkage is off, or the horn slips on its spline. Look at both, then run again.`;
}
const outUs = ({ widthUs }: KeptStep): number => Math.abs(widthUs - neutralUs);

/** Widths are the rig's: its clock's error is theirs. */
function widthOf({ samples }: Input, side: Side, { outUs: out, u, frictionUs }: LookKnee): Quantity {
  const rigUs = neutralUs + outwardOf(side) * out;
  const value = rigUs * samples.clock.ratio;
  return uncertain(value, [
    [typeA(`knee ${side}`, 'currents of the steps about the stop', 8), u],
    [
      typeB(`friction ${side}`, 'friction of servo and linkage, give of the stop', 'from memory'),
      rectangular(frictionUs),
    ],
    clockLine(samples.clock, value),
  ]);
}
const stepsOf = ({ steps }: Search): EvidenceStretch[] =>
  steps.map(({ stretch }) => ({ ...stretch, taps: ['railCurrent'] }));
