// SPDX-License-Identifier: MIT
// What a tap is called in words, on screen and in sentences. A tap that no name is known for shows its own.

const titles: Readonly<Record<string, string>> = {
  packVoltage: 'Pack voltage',
  packCurrentNarrow: 'Pack current',
  packCurrentWide: 'Pack current, wide',
  railVoltage: 'Rail voltage',
  railCurrent: 'Rail current',
  controllerVoltage: 'Controller side',
  jointProbe: 'Joint probe',
  jointProbeWide: 'Joint probe, wide',
  thermistorMotor: 'Motor can',
  thermistorServo: 'Servo case',
  thermistorController: 'Controller case',
  thermistorAmbient: 'Ambient',
  midCell: 'Mid-cell',
  polarity: 'Polarity',
  speed: 'Speed',
};
export const tapTitle = (tap: string) => titles[tap] ?? tap;

/** Taps named inside of a sentence: "gain of railCurrent" is told as "gain of rail current". */
export const tapsNamed = (words: string): string =>
  words.replace(/[a-z]+[A-Z]\w*/g, (word) => titles[word]?.toLowerCase() ?? word);

/** A tap inside of a sentence. */
export const tapWords = (tap: string): string => titles[tap]?.toLowerCase() ?? tap;
