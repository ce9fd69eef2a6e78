// SPDX-License-Identifier: MIT
// Where the numbered ring of each place stands on the plan view when its tags are a list below: view box of the
// drawing, clear of parts, plates and wires. It knows no values.
import type { PlaceId } from './chain-places.ts';

/** The drawing without the rows of tags. */
export const planBox = '20 96 1184 374';
const spots: Readonly<Record<PlaceId, readonly [x: number, y: number]>> = {
  pack: [712, 440],
  leads: [826, 408],
  controller: [545, 162],
  rail: [440, 366],
  receiver: [342, 158],
  radio: [112, 226],
  servo: [300, 382],
  linkage: [206, 346],
  phases: [724, 172],
  harness: [772, 290],
  motor: [930, 158],
  mesh: [1122, 200],
};
export const ringSpot = (id: string): readonly [x: number, y: number] => spots[id as PlaceId];
