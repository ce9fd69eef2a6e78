// SPDX-License-Identifier: MIT
// The colour of a quantity on screen, by its unit.

const colours: Readonly<Record<string, string>> = {
  V: '--volt',
  A: '--amp',
  C: '--temp',
  rpm: '--rpm',
  us: '--pulse',
};
/** Name of the colour token of a unit. */
export const unitColour = (unit: string) => colours[unit] ?? '--pulse';
