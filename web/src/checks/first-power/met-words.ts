// SPDX-License-Identifier: MIT
// What the limited feed met, in words, by the voltage it came to behind its 10 ohm. Thresholds from memory, no source.
const shortV = 0.1;
/** Two diodes in series, at the current of the limited feed. */
const diodesFromV = 0.8;
const diodesToV = 1.9;
const fullPerCent = 90;

export const deadWords =
  'The pack is reversed or missing, so no path was closed. Unplug it, mend its plug, then run again.';
export const unemptiedWords =
  'The controller side would not fall below 0.2 V with everything off: something else feeds it. Unplug everything but the pack lead, then run again.';
export const missingWords = 'Full at once: no capacitor to speak of. Look for a loose leg or a broken joint.';

/** Nothing where the capacitor filled. */
export function metWords(sideV: number, perCent: number): string[] {
  if (perCent >= fullPerCent) return [];
  const stood = `${sideV.toFixed(2)} V behind 10 ohm`;
  if (sideV < shortV) return [`A short: ${stood}. Unplug the pack and look for it before you run again.`];
  if (sideV > diodesFromV && sideV < diodesToV)
    return [
      `Speed controller or capacitor the wrong way round: ${stood}, as two diodes hold it. Unplug the pack and check both.`,
    ];
  return [
    `Something draws current that should not: ${stood} after a quarter of a second. Unplug the pack; look for a leak or a half short.`,
  ];
}
