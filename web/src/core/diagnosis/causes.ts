// SPDX-License-Identifier: MIT
// Why a steering servo runs hot: the causes that are told apart, and what to do about each. Advice is common practice,
// no source; makers' manuals come first.

import { named } from '../titles/check-titles.ts';

export const causeIds = [
  'binding-left',
  'binding-right',
  'hunting',
  'stiff-gear-train',
  'tight-spot',
  'over-voltage',
  'overload',
  'failing-motor',
  'slipping-horn',
  'soft-rail',
  'healthy',
] as const;
export type CauseId = (typeof causeIds)[number];
export interface Cause {
  readonly id: CauseId;
  readonly title: string;
  readonly todo: string;
}
const causeRows: Readonly<Record<CauseId, Omit<Cause, 'id'>>> = {
  'binding-left': {
    title: 'The linkage binds on the left',
    todo: 'Set the left end point inside the stop, then look for what stops the steering early on that side: a ball stud, a wire, a horn that sits a tooth off.',
  },
  'binding-right': {
    title: 'The linkage binds on the right',
    todo: 'Set the right end point inside the stop, then look for what stops the steering early on that side: a ball stud, a wire, a horn that sits a tooth off.',
  },
  hunting: {
    title: 'The servo hunts',
    todo: 'Change the servo, or have its feedback potentiometer replaced. If it can be programmed, a wider dead band calms it until then.',
  },
  'stiff-gear-train': {
    title: 'The gear train of the servo is stiff',
    todo: 'Open, clean and grease the gears as the maker says; change bent pins and worn bearings.',
  },
  'tight-spot': {
    title: 'The gear train of the servo has a tight spot',
    todo: `Turn the horn to the place that ${named('servo-no-load')} names and look there for dirt or a damaged tooth; clean the gears or change the set.`,
  },
  'over-voltage': {
    title: 'The receiver rail is set too high for this servo',
    todo: 'Set the receiver rail, at the speed controller, to the voltage that the servo is rated for.',
  },
  overload: {
    title: 'The steering is too heavy for this servo',
    todo: 'Take the linkage off and turn the wheels by hand: free what is tight, king pins and rod ends first. If they turn freely, go one hole further in on the horn, or use a stronger servo.',
  },
  'failing-motor': {
    title: 'The motor inside the servo is failing',
    todo: "Change the servo or its motor: worn brushes and damaged windings don't come back.",
  },
  'slipping-horn': {
    title: 'The horn slips on its spline',
    todo: 'Tighten the screw of the horn and look at both splines: a horn with stripped teeth is changed, a stripped servo gets a new output gear. Centre the steering afterwards.',
  },
  'soft-rail': {
    title: 'The receiver rail sags under load',
    todo: 'Look at plugs and leads between speed controller and receiver. If they are good, a capacitor at the receiver bridges short dips; a separate regulator mends the rest.',
  },
  healthy: {
    title: 'None of these: servo, linkage and rail look in order',
    todo: `Look at how it is used: cooling air, long hard cornering, a race longer than usual. Measure how hot it gets with ${named('servo-heat')}.`,
  },
};
export const causes: readonly Cause[] = causeIds.map((id) => ({ id, ...causeRows[id] }));
export const causeOf = (id: CauseId): Cause => ({ id, ...causeRows[id] });
