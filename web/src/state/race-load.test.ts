// SPDX-License-Identifier: MIT
// Predicted currents and drops against plain Ohm's law on kept runs, and the words for what no run tells.
import { describe, expect, it } from 'vitest';
import { keptSummary } from './kept-run-fixture.ts';
import { predictedWords, raceLoad, raceSentence, type RaceFacts } from './race-load.ts';
import type { ResultLine, RunSummary } from './run-summary.ts';
import { marmot } from './shelf.svelte.ts';
import type { PartKind } from '#core/parts/part';

const check = (id: string, part: PartKind, title: string) => ({ id, part, title });
const checks = [
  check('joint-drop', 'leads', 'Joints and leads'),
  check('pack-sag', 'pack', 'Pack: sag'),
  check('servo-scrub', 'servo', 'On tyres'),
  check('rail-sag', 'controller', 'Rail: sag'),
];
const line = (id: string, unit: string, value: number, half: number): ResultLine => ({
  id,
  title: id,
  unit,
  verdict: 'pass',
  judged: false,
  value,
  interval: [value - half, value + half],
});
const ran = (checkId: string, part: PartKind, partName: string, results: ResultLine[]): RunSummary => ({
  ...keptSummary({ day: 20, verdict: 'pass' }),
  id: checkId,
  checkId,
  checkTitle: checks.find(({ id }) => id === checkId)!.title,
  part,
  partName,
  results,
});
const car = { ...marmot, pack: { ...marmot.pack, raceCurrentA: 30 } };
const nowMs = Date.parse('2026-11-21T18:00:00Z');
const facts = (...runs: RunSummary[]): RaceFacts => ({ runs, checks, car, nowMs });
const at = (place: string, given: RaceFacts) => raceLoad(given).find((wire) => wire.place === place)!;
const joints = (...more: ResultLine[]) =>
  ran('joint-drop', 'leads', `leads of ${car.name}`, [
    line('worst-joint', '%', 60, 1),
    line('joint-1', 'ohm', 0.001, 0.0001),
    line('joint-2', 'ohm', 0.002, 0.0001),
    ...more,
  ]);

describe('at race load', () => {
  it('the leads lose the race current times all joints, their errors added', () => {
    const { currentA, dropV, words } = at('leads', facts(joints()));
    expect(currentA).toEqual({ value: 30, half: 0 });
    expect(dropV?.value).toBeCloseTo(0.09, 12);
    expect(dropV?.half).toBeCloseTo(0.006, 12);
    expect(words[0]).toMatch(/2 joints and leads of "Joints and leads", \d+ h ago/);
  });
  it('a joint that was not measured leaves no drop', () => {
    const lost: ResultLine = { id: 'joint-3', title: '', unit: 'ohm', verdict: 'not measured', judged: true };
    const { dropV, words } = at('leads', facts(joints(lost)));
    expect(dropV).toBeNull();
    expect(words).toEqual(['Their drop is not measured: "Joints and leads: what they cost" would tell.']);
  });
  it('what was measured before a repair tells nothing any more', () => {
    const repairs = [{ partName: `leads of ${car.name}`, at: '2026-11-21', words: 'plug soldered anew' }];
    expect(at('leads', { ...facts(joints()), repairs }).dropV).toBeNull();
  });
  it('the pack sags by the race current of now times its resistance, whatever it was when it was measured', () => {
    const ohm = ran('pack-sag', 'pack', car.pack.name, [line('pack-resistance', 'ohm', 0.02, 0.001)]);
    expect(at('pack', facts(ohm)).dropV?.value).toBeCloseTo(0.6, 12);
    const harder = { ...facts(ohm), car: { ...car, pack: { ...car.pack, raceCurrentA: 60 } } };
    expect(at('pack', harder).dropV?.value).toBeCloseTo(1.2, 12);
  });
  it("the rail loses the servo's peak times its source's resistance, two errors in squares", () => {
    const peak = ran('servo-scrub', 'servo', car.servo.name, [line('scrub-peak-current', 'A', 3, 0.03)]);
    const source = ran('rail-sag', 'controller', car.controller.name, [
      line('source-resistance', 'ohm', 0.04, 0.002),
    ]);
    const { currentA, dropV } = at('rail', facts(peak, source));
    expect(currentA).toEqual({ value: 3, half: expect.closeTo(0.03, 12) as number });
    expect(dropV?.value).toBeCloseTo(0.12, 12);
    expect(dropV?.half).toBeCloseTo(Math.hypot(0.04 * 0.03, 3 * 0.002), 12);
    expect(at('rail', facts(peak)).dropV).toBeNull();
  });
  it('says of everything that no run tells which check would', () => {
    const words = raceLoad(facts()).flatMap((wire) => wire.words);
    expect(words).toEqual([
      'Its sag is not measured: "Pack: sag and resistance" would tell.',
      'Their drop is not measured: "Joints and leads: what they cost" would tell.',
      'Its current is not measured: "Servo: at work on its tyres" would tell.',
      'Its resistance is not measured: "Receiver rail: sag under load" would tell.',
    ]);
  });
  it('says what the current is from', () => {
    expect(raceSentence(facts())).toBe('A prediction for 30 A, as entered with the pack.');
    expect(raceSentence({ ...facts(), car: marmot })).toMatch(/40 A, the usual mean of a race/);
  });
  it('writes figures with their half-width', () => {
    expect(predictedWords({ value: 30, half: 0 }, 'A')).toBe('30\u00a0A');
    expect(predictedWords({ value: 0.09, half: 0.006 }, 'V')).toBe('0.090\u00a0±\u00a00.006\u00a0V');
    expect(predictedWords(null, 'V')).toBe('not measured');
  });
});
