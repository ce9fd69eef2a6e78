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
    todo: 'Set the left end point inside the stop, then look for what stops the steering early on that side: a ball stud, a wire, the wrong tooth of the spline.',
  },
  'binding-right': {
    title: 'The linkage binds on the right',
    todo: 'Set the right end point inside the stop, then look for what stops the steering early on that side: a ball stud, a wire, the wrong tooth of the spline.',
  },
  hunting: {
    title: 'The servo hunts',
    todo: 'Loosen nothing: change the servo, or have its feedback track seen to. A programmable one may take a wider dead band meanwhile.',
  },
  'stiff-gear-train': {
    title: 'The gear train is stiff',
    todo: 'Open, clean and grease the gears as the maker says; change bent pins and worn bearings.',
  },
  'tight-spot': {
    title: 'One place of the travel is tight',
    todo: 'Look for a chipped or dirty tooth at that place; change the gear set.',
  },
  'over-voltage': {
    title: 'The rail is set too high for this servo',
    todo: "Set the controller's receiver rail to what the servo is rated for.",
  },
  overload: {
    title: 'The steering is too heavy for this servo',
    todo: 'Take the linkage off and turn the wheels by hand: mend tight king pins and rod ends. Else a stronger servo, or one hole further in on the horn.',
  },
  'failing-motor': {
    title: 'The motor of the servo is failing',
    todo: 'Change the servo or its motor: worn brushes and windings do not come back.',
  },
  'slipping-horn': {
    title: 'The horn slips on its spline',
    todo: 'Change the horn and its screw; look at the spline for stripped teeth.',
  },
  'soft-rail': {
    title: 'The receiver rail is soft',
    todo: 'Look at plugs and leads between controller and receiver; a buffer capacitor or an own regulator helps a weak one.',
  },
  healthy: {
    title: 'Nothing of these: servo, linkage and rail are in order',
    todo: `Look at how it is used: air, hours of hard cornering, a race longer than usual. Measure its heat with ${named('servo-heat')}.`,
  },
};
export const causes: readonly Cause[] = causeIds.map((id) => ({ id, ...causeRows[id] }));
export const causeOf = (id: CauseId): Cause => ({ id, ...causeRows[id] });
