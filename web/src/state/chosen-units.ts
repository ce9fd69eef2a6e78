// SPDX-License-Identifier: MIT
// The units that values are shown in now: the usual ones until a page says where its person's choice stands.
import { usualWish, type UnitWish } from '#core/units/shown-unit';

let choice: () => UnitWish = () => usualWish;

/** Read while something is shown, so that it is shown anew when the choice changes. */
export const chosenUnits = (): UnitWish => choice();
export function showUnitsOf(source: () => UnitWish): void {
  choice = source;
}
