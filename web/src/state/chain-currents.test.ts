// SPDX-License-Identifier: MIT
// Which current each wire is drawn with, and that it neither trembles nor pretends to know.
import { describe, expect, it } from 'vitest';
import { liveCurrents, raceCurrents, SteadyCurrents } from './chain-currents.ts';
import { SteadyCurrent, wireWidth } from './chain-drawing.ts';
import type { Live } from './chain-view.ts';

const live =
  (values: Record<string, number>, fresh = true): Live =>
  (tap) =>
    tap in values ? { value: values[tap], unit: 'A', fresh, age: '2 s ago' } : null;

describe('the currents of now', () => {
  it("are the taps', and what no tap tells is not known while something flows", () =>
    expect(liveCurrents(live({ packCurrentNarrow: 2, railCurrent: 0.5 }))).toEqual({
      packA: 2,
      phasesA: null,
      railA: 0.5,
      servoA: null,
    }));
  it('are nothing everywhere where nothing flows, or no rig ever spoke', () => {
    const nothing = { packA: 0, phasesA: 0, railA: 0, servoA: 0 };
    expect(liveCurrents(live({}))).toEqual(nothing);
    expect(liveCurrents(live({ packCurrentNarrow: 0, railCurrent: 0 }))).toEqual(nothing);
  });
  it('are not known once a tap has fallen silent', () =>
    expect(liveCurrents(live({ packCurrentNarrow: 2 }, false)).packA).toBeNull());
});
it('at race load, the phases carry what the leads do, the servo what the rail does', () => {
  const wire = { title: '', dropV: null, words: [] };
  const leads = { ...wire, place: 'leads' as const, currentA: { value: 40, half: 0 } };
  const rail = { ...wire, place: 'rail' as const, currentA: null };
  expect(raceCurrents([leads, rail])).toEqual({ packA: 40, phasesA: 40, railA: null, servoA: null });
});
describe('a drawn current', () => {
  it('holds until it has moved by more than a fifth', () => {
    const drawn = new SteadyCurrent();
    expect([1, 1.19, 0.81, 1.21, 1.0, 0.96].map((amps) => drawn.next(amps))).toEqual([
      1, 1, 1, 1.21, 1.21, 0.96,
    ]);
  });
  it('leaves and comes back from the unknown at once, and from nothing', () => {
    const drawn = new SteadyCurrent();
    expect([1, null, 1.1, 0, 0.05].map((amps) => drawn.next(amps))).toEqual([1, null, 1.1, 0, 0.05]);
  });
  it('does not tremble about nothing', () => {
    const drawn = new SteadyCurrent();
    expect([0.016, 0.024, 0.018, 0.04].map((amps) => drawn.next(amps))).toEqual([0.016, 0.016, 0.016, 0.04]);
  });
  it('is held wire by wire', () => {
    const steady = new SteadyCurrents();
    const at = (packA: number, railA: number) => steady.next({ packA, phasesA: null, railA, servoA: 0 });
    at(1, 1);
    expect(at(1.1, 2)).toMatchObject({ packA: 1, railA: 2 });
  });
  it('is hollow for nothing and for the unknown, told apart', () => {
    expect(wireWidth(0)).toEqual({ core: 0, sleeve: 7, known: true });
    expect(wireWidth(null)).toEqual({ core: 0, sleeve: 7, known: false });
  });
});
