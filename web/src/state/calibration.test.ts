// SPDX-License-Identifier: MIT
// A guided calibration as the page leads it, against a worker and a virtual person played here: what is asked and
// answered in which order, what is kept, how it ends.
import { describe, expect, it } from 'vitest';
import { usualMeter } from '#core/calibration/meter';
import { fromBenchSchema, toBenchSchema, type FromBench, type ToBench } from '../worker/messages.ts';
import { Calibration, type CalibrationTools } from './calibration.svelte.ts';
import { marmot } from './shelf.svelte.ts';

const act = {
  kind: 'act',
  words: 'Put the leads on one cell.',
  after: 'safe',
  taps: ['railVoltage'],
} as const;
const read = {
  kind: 'read',
  words: 'Enter V.',
  quantity: 'voltage',
  place: 'source',
  taps: ['railVoltage'],
  refused: null,
} as const;
const point = { shown: 3.91, shownU: 0.003, meter: 3.9, meterOwnU: 0.0003, shared: [] };
const outcome = {
  tap: 'railVoltage',
  state: 'adopted',
  words: 'adopted',
  points: [point],
  tightness: [],
} as const;

function bench(kept: Record<string, string> = {}) {
  const told: ToBench[] = [];
  /** What happened at the bench and in the worker, in order. */
  const log: string[] = [];
  const tools = {
    bench: {
      attend: () => {},
      tell: (message: ToBench) => {
        told.push(toBenchSchema.parse(message));
        log.push(message.kind);
      },
      rig: null,
      nowMs: 0,
    },
    shelf: { car: marmot },
    ways: {
      person: (words: string) => Promise.resolve(void log.push(`person: ${words}`)),
      takeMeter: (meter: unknown) => void log.push(meter ? 'meter in hand' : 'meter away'),
      readMeter: (place: string) => Promise.resolve(place === 'source' ? 3.9 : null),
      keepMemory: () => Promise.resolve(void log.push('memory kept')),
    },
    memory: {
      getItem: (at: string) => kept[at] ?? null,
      setItem: (at: string, value: string) => void (kept[at] = value),
    },
    now: () => Date.parse('2026-11-27T12:00:00Z'),
  };
  const calibration = new Calibration(tools as unknown as CalibrationTools);
  const hear = (message: FromBench) => calibration.hear(fromBenchSchema.parse(message));
  return { calibration, hear, told, log, kept };
}
function begun() {
  const made = bench();
  made.calibration.keepMeter(usualMeter);
  made.calibration.choose('railVoltage', true);
  made.calibration.start();
  return made;
}
describe('a calibration on the page', () => {
  it('does not start with nothing chosen, nor with a meter nobody told, and says so', () => {
    const { calibration, told } = bench();
    expect(calibration.missing).toBe('Choose at least one tap.');
    calibration.start();
    calibration.choose('railVoltage', true);
    expect(calibration.missing).toBe('Say first what your meter is.');
    calibration.start();
    expect([calibration.running, told]).toEqual([false, []]);
  });
  it('takes the meter in hand and tells the worker what, with what, for what day', () => {
    const { told, log } = begun();
    expect(log).toEqual(['meter in hand', 'calibrate']);
    expect(told[0]).toMatchObject({
      wish: { taps: ['railVoltage'], meter: usualMeter, today: '2026-11-27', thermistorsIn: 'ice' },
    });
  });
  it('lets the person act before it says that it is done, and keeps the words while the meter is read', async () => {
    const { calibration, hear, log, told } = begun();
    hear({ kind: 'calibrationAsk', askId: 1, ask: { ...act, taps: [...act.taps] } });
    calibration.enter(3.9);
    await calibration.done();
    expect(log.slice(2)).toEqual(['person: Put the leads on one cell.', 'calibrationAnswer']);
    hear({ kind: 'calibrationAsk', askId: 2, ask: { ...read, taps: [...read.taps] } });
    expect(calibration.setup).toBe(act.words);
    expect(await calibration.virtualReading()).toBe(3.9);
    calibration.enter(null);
    expect(told.slice(1)).toEqual([
      { kind: 'calibrationAnswer', askId: 1, value: null },
      { kind: 'calibrationAnswer', askId: 2, value: null },
    ]);
    expect(calibration.ask).toBeNull();
  });
  it('collects points of one wiring, and begins anew with the next', () => {
    const { calibration, hear } = begun();
    hear({ kind: 'calibrationAsk', askId: 1, ask: { ...act, taps: ['railVoltage'] } });
    hear({ kind: 'calibrationPoint', tap: 'railVoltage', point });
    hear({ kind: 'calibrationAsk', askId: 2, ask: { ...act, taps: ['railVoltage'] } });
    expect(calibration.points.get('railVoltage')).toEqual([point]);
    hear({ kind: 'calibrationAsk', askId: 3, ask: { ...act, taps: ['railCurrent'] } });
    expect([...calibration.points.keys()]).toEqual([]);
  });
  it('puts the meter away at the end, keeps the virtual memory and tells each tap', () => {
    const { calibration, hear, log } = begun();
    hear({
      kind: 'calibrationEnded',
      outcomes: [{ ...outcome, points: [point], tightness: [] }],
      stored: true,
      words: 'Kept.',
    });
    expect(log.slice(2)).toEqual(['meter away', 'memory kept']);
    expect(calibration).toMatchObject({
      running: false,
      ending: { stored: true, words: 'Kept.' },
      chosen: [],
    });
    calibration.clear();
    expect(calibration.ending).toBeNull();
  });
  it('keeps nothing when nothing was stored, and says what failed', () => {
    const { calibration, hear, log } = begun();
    hear({ kind: 'trouble', words: 'The bench is not ready.', during: 'calibrate' });
    expect(log).not.toContain('memory kept');
    expect(calibration).toMatchObject({ running: false, trouble: 'The bench is not ready.' });
  });
});
describe('the meter', () => {
  it('is asked once and kept', () => {
    const { kept, calibration } = bench();
    expect(calibration.meterKnown).toBe(false);
    calibration.keepMeter({ ...usualMeter, name: 'mine' });
    const again = bench(kept).calibration;
    expect([again.meterKnown, again.meter.name]).toEqual([true, 'mine']);
  });
  it.each(['{', '{"name":"half"}'])('kept as %s is asked anew', (meter) => {
    expect(bench({ meter }).calibration).toMatchObject({ meterKnown: false, meter: usualMeter });
  });
});
