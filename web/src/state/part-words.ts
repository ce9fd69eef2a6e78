// SPDX-License-Identifier: MIT
// How each kind of part is called on screen, and what a check of it commonly does to it.
import type { PartKind } from '#core/parts/part';

export const partTitles: Readonly<Record<PartKind, string>> = {
  motor: 'Motor',
  servo: 'Servo',
  controller: 'Controller',
  pack: 'Pack',
  radio: 'Radio',
  leads: 'Leads and joints',
  drive: 'Drive train',
};
/** Where a check does something else it says so itself. */
export const partMoves: Readonly<Record<PartKind, string>> = {
  motor: 'The motor will run',
  servo: 'The servo will push',
  controller: 'The rail will be loaded',
  pack: 'The pack will be loaded',
  radio: 'The car follows wheel and trigger',
  leads: 'The pack load draws its current',
  drive: 'The motor will turn the spur',
};
