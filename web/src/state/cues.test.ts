// SPDX-License-Identifier: MIT
// Cues: silent unless chosen, which notes a verdict and a trip are, how the tone of holding rises. Notes are told by their musical step in equal
// temperament (a fifth is 7 of 12 half tones, a fourth 5: from memory, no source), not by the table they are made from.
import { afterEach, describe, expect, it, vi } from 'vitest';
import { tones, type Glide, type Note } from '../adapters/tones.ts';
import { Cues, holdS } from './cues.svelte.ts';

function listening(kept: Record<string, string> = {}) {
  const memory = new Map(Object.entries(kept));
  const played: { notes: readonly Note[]; level: number }[] = [];
  const shaken: (readonly number[])[] = [];
  const glides: { glide: Glide; level: number; ended: boolean }[] = [];
  const sounder = {
    play: (notes: readonly Note[], level: number) => void played.push({ notes, level }),
    glide: (glide: Glide, level: number) => {
      const one = { glide, level, ended: false };
      glides.push(one);
      return () => void (one.ended = true);
    },
    vibrate: (pattern: readonly number[]) => void shaken.push(pattern),
  };
  const cues = new Cues(sounder, {
    getItem: (key) => memory.get(key) ?? null,
    setItem: (key, value) => void memory.set(key, value),
  });
  return { cues, memory, played, shaken, glides };
}
const phase = (name: 'safe' | 'live' | 'tripped' | 'lost') =>
  ({ kind: 'phase', phase: name, words: '' }) as const;
const done = (verdict: 'pass' | 'fail' | 'undecided' | 'not measured') =>
  ({ verdict, ending: 'done' }) as const;
const halfTones = ([a, b]: readonly Note[]) => Math.round(12 * Math.log2(b.hz / a.hz));

describe('cues', () => {
  it('are silent unless chosen', () => {
    const { cues, played, shaken } = listening();
    cues.ended(done('fail'));
    cues.hear(phase('tripped'));
    expect([played, shaken]).toEqual([[], []]);
  });
  it.each([
    ['pass', 7],
    ['fail', -5],
    ['undecided', 0],
  ] as const)('%s moves by %i half tones', (verdict, step) => {
    const { cues, played } = listening({ sound: 'on' });
    cues.ended(done(verdict));
    expect(halfTones(played[0].notes)).toBe(step);
  });
  it('are over within half a second', () => {
    const { cues, played } = listening({ sound: 'on' });
    for (const verdict of ['pass', 'fail', 'undecided', 'not measured'] as const) cues.ended(done(verdict));
    cues.hear(phase('tripped'));
    for (const { notes } of played)
      expect(Math.max(...notes.map(({ atS, lengthS }) => atS + lengthS))).toBeLessThanOrEqual(0.5);
  });
  it('tell a trip once, and not again as a verdict', () => {
    const { cues, played, shaken } = listening({ sound: 'on', vibration: 'on' });
    cues.hear(phase('live'));
    cues.hear(phase('tripped'));
    cues.hear(phase('tripped'));
    cues.ended({ verdict: 'not measured', ending: 'tripped' });
    expect([played.length, shaken.length]).toEqual([1, 1]);
    expect(played[0].notes.map(({ hz }) => hz)).toEqual([220, 220, 220]);
  });
  it('keep the choice and the level', () => {
    const { cues, memory } = listening();
    cues.chooseSound(true);
    cues.chooseLevel(0.3);
    expect(listening(Object.fromEntries(memory)).cues).toMatchObject({
      sound: true,
      vibration: false,
      level: 0.3,
    });
  });
});

describe('the tone of holding to go live', () => {
  it('is silent while sound is off, and where the person chose it off', () => {
    const silent: Record<string, string>[] = [{}, { sound: 'on', 'sound while holding': 'off' }];
    for (const kept of silent) {
      const { cues, glides, played } = listening(kept);
      cues.hold();
      cues.live();
      expect([glides, played]).toEqual([[], []]);
    }
  });
  it('lasts as long as the hold, ends when let go, and clicks only when live', () => {
    const { cues, glides, played } = listening({ sound: 'on', 'sound level': '0.3' });
    cues.hold();
    expect(glides).toMatchObject([{ level: 0.3, ended: false, glide: { lengthS: holdS } }]);
    cues.letGo();
    expect([glides[0].ended, played]).toEqual([true, []]);
    cues.hold();
    cues.live();
    expect([glides[1].ended, played.length]).toEqual([true, 1]);
    expect(Math.max(...played[0].notes.map(({ atS, lengthS }) => atS + lengthS))).toBeLessThan(0.1);
  });
  it('keeps the choice', () => {
    const { cues, memory } = listening({ sound: 'on' });
    cues.chooseHoldTone(false);
    expect(listening(Object.fromEntries(memory)).cues.holdTone).toBe(false);
  });
});
/** Web Audio API (W3C Recommendation), AudioParam.exponentialRampToValueAtTime: v(t) = V0 (V1/V0)^((t-T0)/(T1-T0)). */
function ramp(param: Scheduled, t: number): number {
  const [[, v0, t0], [, v1, t1]] = param.calls;
  return t >= t1 ? v1 : v0 * (v1 / v0) ** ((t - t0) / (t1 - t0));
}
interface Scheduled {
  readonly calls: [how: string, value: number, at: number][];
}
/** An audio context that notes what it is told. */
function listeningContext() {
  const param = () => {
    const calls: Scheduled['calls'] = [];
    const note = (how: string) => (value: number, at: number) => void calls.push([how, value, at]);
    const ways = [
      'setValueAtTime',
      'exponentialRampToValueAtTime',
      'linearRampToValueAtTime',
      'setTargetAtTime',
    ];
    return {
      calls,
      cancelScheduledValues: () => {},
      ...Object.fromEntries(ways.map((way) => [way, note(way)])),
    };
  };
  const [frequency, gain, stops] = [param(), param(), [] as number[]];
  const joined = { connect: (to: unknown) => to };
  const context = {
    currentTime: 2,
    destination: {},
    resume: () => Promise.resolve(),
    createOscillator: () => ({ ...joined, frequency, start: () => {}, stop: (at: number) => stops.push(at) }),
    createGain: () => ({ ...joined, gain }),
  };
  vi.stubGlobal('AudioContext', function Context() {
    return context;
  });
  return { frequency, gain, stops, context };
}
describe('what the loudspeaker is told while someone holds', () => {
  afterEach(() => void vi.unstubAllGlobals());

  it('rises low and evenly by one octave, a half tone in each twelfth of the hold', () => {
    const { frequency } = listeningContext();
    new Cues(tones(), { getItem: (key) => (key === 'sound' ? 'on' : null), setItem: () => {} }).hold();
    expect(frequency.calls.map(([how]) => how)).toEqual(['setValueAtTime', 'exponentialRampToValueAtTime']);
    const pitches = Array.from({ length: 13 }, (_, k) => ramp(frequency, 2 + (k * holdS) / 12));
    const steps = pitches.slice(1).map((hz, k) => 12 * Math.log2(hz / pitches[k]));
    for (const step of steps) expect(step).toBeCloseTo(1, 9);
    expect(pitches[12] / pitches[0]).toBeCloseTo(2, 9);
    expect(pitches[12], 'lower than the notes of a verdict').toBeLessThan(440);
  });
  it('ends softly within a twentieth of a second of letting go', () => {
    const { stops, gain, context } = listeningContext();
    const end = tones().glide({ fromHz: 147, toHz: 294, lengthS: 1 }, 1);
    context.currentTime = 2.4;
    end();
    expect(gain.calls.at(-1)?.slice(0, 2)).toEqual(['setTargetAtTime', 0]);
    expect(stops[0] - 2.4).toBeLessThan(0.05);
  });
});
