// SPDX-License-Identifier: MIT
// Tones and vibration of the device: sine notes with soft edges. It knows no verdict; silent where the browser has
// neither.

export interface Note {
  readonly hz: number;
  /** From the first note of the cue, s. */
  readonly atS: number;
  readonly lengthS: number;
}
export interface Sounder {
  /** `level`: 0 to 1. */
  play(notes: readonly Note[], level: number): void;
  /** On and off in turn, ms. */
  vibrate(pattern: readonly number[]): void;
}
const edgeS = 0.015;
/** Full level would clip where notes meet. */
const loudest = 0.5;

export function tones(): Sounder {
  let context: AudioContext | null = null;
  return {
    play(notes, level) {
      context ??= new AudioContext();
      void context.resume();
      for (const note of notes) sound(context, note, level * loudest);
    },
    vibrate: (pattern) => void navigator.vibrate?.([...pattern]),
  };
}
function sound(context: AudioContext, { hz, atS, lengthS }: Note, level: number): void {
  const [note, gain] = [context.createOscillator(), context.createGain()];
  const from = context.currentTime + atS;
  note.frequency.value = hz;
  gain.gain.setValueAtTime(0, from);
  gain.gain.linearRampToValueAtTime(level, from + edgeS);
  gain.gain.setValueAtTime(level, from + lengthS - edgeS);
  gain.gain.linearRampToValueAtTime(0, from + lengthS);
  note.connect(gain).connect(context.destination);
  note.start(from);
  note.stop(from + lengthS);
}
