// SPDX-License-Identifier: MIT
// The units that the person chose to see temperatures, torques and rotational speeds in, one choice for the whole page.
// Everything inside keeps its own unit.
import { choices, usualWish, type UnitKind, type UnitWish } from '#core/units/shown-unit';
import type { UnitName } from '#core/units/units';
import { showUnitsOf } from './chosen-units.ts';

interface Memory {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}
/** What was kept but is no unit of its kind, is none. */
function kept(memory: Memory): UnitWish {
  const of = (kind: UnitKind) =>
    choices[kind].find((each) => each === memory.getItem(kind)) ?? usualWish[kind];
  return Object.fromEntries(Object.keys(choices).map((kind) => [kind, of(kind as UnitKind)])) as UnitWish;
}
export class UnitsChoice {
  wish = $state.raw<UnitWish>(usualWish);

  constructor(private readonly memory: Memory) {
    this.wish = kept(memory);
    showUnitsOf(() => this.wish);
  }
  /** Throws RangeError for a unit that is none of its kind. */
  choose(kind: UnitKind, unit: UnitName): void {
    if (!choices[kind].some((each) => each === unit)) throw new RangeError(`${unit} is no ${kind}`);
    this.wish = { ...this.wish, [kind]: unit };
    this.memory.setItem(kind, unit);
  }
}
