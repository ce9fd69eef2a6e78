// SPDX-License-Identifier: MIT
// Tones and vibration of the device: sine notes and glides with soft edges. It knows no verdict; silent where the browser
// has neither.

export interface Note {
  readonly hz: number;
  /** From the first note of the cue, s. */
  readonly atS: number;
  readonly lengthS: number;
}
/** Rises or falls by equal steps of pitch in equal times: hz(t) = fromHz (toHz / fromHz)^(t / lengthS). */
export interface Glide {
  readonly fromHz: number;
  readonly toHz: number;
  readonly lengthS: number;
}
export interface Sounder {
  /** `level`: 0 to 1. */
  play(notes: readonly Note[], level: number): void;
  /** Returns what ends it, softly, whenever it is called. */
  glide(glide: Glide, level: number): () => void;
  /** On and off in turn, ms. */
  vibrate(pattern: readonly number[]): void;
}
const edgeS = 0.015;
/** Full level would clip where notes meet. */
const loudest = 0.5;

export function tones(): Sounder {
  let context: AudioContext | null = null;
  const awake = () => {
    context ??= new AudioContext();
    void context.resume();
    return context;
  };
  return {
    play(notes, level) {
      for (const note of notes) sound(awake(), note, level * loudest);
    },
    glide: (glide, level) => slide(awake(), glide, level * loudest),
    vibrate: (pattern) => void navigator.vibrate?.([...pattern]),
  };
}
/** The exponential ramp of the Web Audio API is the formula of `Glide`; at its end the pitch stays. */
function slide(context: AudioContext, { fromHz, toHz, lengthS }: Glide, level: number): () => void {
  const [note, gain] = [context.createOscillator(), context.createGain()];
  const from = context.currentTime;
  note.frequency.setValueAtTime(fromHz, from);
  note.frequency.exponentialRampToValueAtTime(toHz, from + lengthS);
  gain.gain.setValueAtTime(0, from);
  gain.gain.linearRampToValueAtTime(level, from + edgeS);
  note.connect(gain).connect(context.destination);
  note.start(from);
  return () => {
    const now = context.currentTime;
    gain.gain.cancelScheduledValues(now);
    gain.gain.setTargetAtTime(0, now, edgeS / 3);
    note.stop(now + 2 * edgeS);
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
