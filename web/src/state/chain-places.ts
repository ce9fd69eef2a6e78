// SPDX-License-Identifier: MIT
// The places of the chain: which part or joint each tag names, where it hangs in the plan view (view box
// 1240 x 564, nose to the left), and which part stands there. It knows no values.
import type { PartKind } from '#checks/check';

export type PlaceId =
  | 'pack'
  | 'leads'
  | 'controller'
  | 'rail'
  | 'receiver'
  | 'radio'
  | 'servo'
  | 'linkage'
  | 'phases'
  | 'harness'
  | 'motor'
  | 'mesh';
export interface ChainPlace {
  readonly id: PlaceId;
  readonly title: string;
  /** Top left of the 190 x 88 tag. */
  readonly tag: readonly [number, number];
  /** Side of the tag with the cut corners and the hole. */
  readonly hole: 'top' | 'bottom';
  /** Hole, measured from the tag's left edge. */
  readonly holeX: number;
  /** The ring on the part. */
  readonly ring: readonly [number, number];
  /** Part that stands here: its checks are shown here where they name no other place. */
  readonly part?: PartKind;
  /** Indented in the phone's list: it hangs on the receiver rail. */
  readonly branch: boolean;
}

const top = (column: number) => [column * 210, 0] as const;
const bottom = (column: number) => [column * 210, 474] as const;

/** In chain order, which is also the tab order. */
export const chainPlaces: readonly ChainPlace[] = [
  {
    id: 'pack',
    title: 'Pack',
    tag: bottom(3),
    hole: 'top',
    holeX: 95,
    ring: [712, 440],
    part: 'pack',
    branch: false,
  },
  {
    id: 'leads',
    title: 'Leads and joints',
    tag: bottom(4),
    hole: 'top',
    holeX: 95,
    ring: [834, 386],
    part: 'leads',
    branch: false,
  },
  {
    id: 'controller',
    title: 'Controller',
    tag: top(2),
    hole: 'bottom',
    holeX: 95,
    ring: [545, 176],
    part: 'controller',
    branch: false,
  },
  {
    id: 'rail',
    title: 'Receiver rail',
    tag: bottom(2),
    hole: 'top',
    holeX: 95,
    ring: [440, 326],
    branch: true,
  },
  {
    id: 'receiver',
    title: 'Receiver',
    tag: top(1),
    hole: 'bottom',
    holeX: 95,
    ring: [342, 174],
    branch: true,
  },
  {
    id: 'radio',
    title: 'Radio',
    tag: top(0),
    hole: 'bottom',
    holeX: 95,
    ring: [71, 162],
    part: 'radio',
    branch: true,
  },
  {
    id: 'servo',
    title: 'Servo',
    tag: bottom(1),
    hole: 'top',
    holeX: 95,
    ring: [300, 364],
    part: 'servo',
    branch: true,
  },
  { id: 'linkage', title: 'Linkage', tag: bottom(0), hole: 'top', holeX: 95, ring: [206, 318], branch: true },
  {
    id: 'phases',
    title: 'Phase leads',
    tag: top(3),
    hole: 'bottom',
    holeX: 95,
    ring: [724, 190],
    branch: false,
  },
  {
    id: 'harness',
    title: 'Sensor cable',
    tag: [866, 330],
    hole: 'top',
    holeX: 20,
    ring: [772, 284],
    branch: false,
  },
  {
    id: 'motor',
    title: 'Motor',
    tag: top(4),
    hole: 'bottom',
    holeX: 95,
    ring: [930, 168],
    part: 'motor',
    branch: false,
  },
  {
    id: 'mesh',
    title: 'Gear mesh',
    tag: top(5),
    hole: 'bottom',
    holeX: 95,
    ring: [1122, 212],
    part: 'drive',
    branch: false,
  },
];
export const placeOfPart = (part: PartKind) => chainPlaces.find((place) => place.part === part)!;
export const placeById = (id: string) => chainPlaces.find((place) => place.id === id);
/** Where a check is shown: its own place, else that of its part. */
export const placeOf = (check: { readonly part: PartKind; readonly place?: string }): ChainPlace =>
  chainPlaces.find(({ id }) => id === check.place) ?? placeOfPart(check.part);
