// SPDX-License-Identifier: MIT
// What a tap is called on screen, and the colour of its quantity. A tap that no name is known for shows its own.

const titles: Readonly<Record<string, string>> = {
  packVoltage: 'Pack voltage',
  packCurrentNarrow: 'Pack current',
  packCurrentWide: 'Pack current, wide',
  railVoltage: 'Rail voltage',
  railCurrent: 'Rail current',
  controllerVoltage: 'Controller side',
  jointProbe: 'Joint probe',
  thermistorMotor: 'Motor can',
  thermistorServo: 'Servo case',
  thermistorController: 'Controller case',
  thermistorAmbient: 'Ambient',
  midCell: 'Mid-cell',
  polarity: 'Polarity',
  speed: 'Speed',
};
export const tapTitle = (tap: string) => titles[tap] ?? tap;

/** Taps named inside of a sentence: "gain of railCurrent" is "gain of rail current" on screen. */
export const tapsNamed = (words: string): string =>
  words.replace(/[a-z]+[A-Z]\w*/g, (word) => titles[word]?.toLowerCase() ?? word);

const colours: Readonly<Record<string, string>> = {
  V: '--volt',
  A: '--amp',
  C: '--temp',
  rpm: '--rpm',
  us: '--pulse',
};
/** Name of the colour token of a unit. */
export const unitColour = (unit: string) => colours[unit] ?? '--pulse';
