// SPDX-License-Identifier: MIT
// Sentences a person affirms before a run, shared by checks. Makers' manuals and the event's rules come first.
export const packCaution =
  'The pack stands on a surface that cannot burn, off its charger, and I stay beside it: lithium packs burn when shorted, reversed or punctured.';
export const polarityCaution =
  'I checked the polarity of the pack lead, then checked it again: controllers of this kind commonly have no protection against a reversed pack (common practice, no source).';
export const bareMotorCaution =
  'The motor is clamped in a stand, pinion off, nothing can touch the rotor; eyes are protected, sleeves and hair away.';
export const manualCaution =
  "I know what the makers' manuals and the event's rules say of these parts; they come first.";
