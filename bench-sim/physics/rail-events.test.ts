// SPDX-License-Identifier: MIT
// Rail events against the closed form of a one-pole filter: a rectangular dip of V for t shows V (1 - exp(-t/tau)).
import { expect, it } from 'vitest';
import { RailEvents } from './rail-events.ts';

const stepS = 8e-6;
function watch() {
  const events = new RailEvents(6, stepS);
  let steps = 0;
  const run = (seconds: number, railV: number) => {
    for (let k = 0; k < Math.round(seconds / stepS); k++) events.step(++steps * stepS, railV);
  };
  const begin = (settledV: number) => events.begin(steps * stepS, settledV);
  run(0.01, 6);
  return { events, run, begin };
}

it('sees a short dip as 3.4 kHz let it', () => {
  const { events, run, begin } = watch();
  begin(5.9);
  run(80e-6, 5);
  run(0.01, 5.9);
  const exact = 6 - (1 - Math.exp(-2 * Math.PI * 3400 * 80e-6));
  expect(events.lowest()!.lowestV).toBeCloseTo(exact, 6);
});
it('times the recovery to 2 % of the setting', () => {
  const { events, run, begin } = watch();
  begin(5.9);
  run(0.002, 5.5);
  run(0.01, 5.9);
  const step = events.lowestStep()!;
  const backS = Math.log(0.4 / 0.12) / (2 * Math.PI * 3400);
  expect(step.outsideUntilS - step.startS).toBeGreaterThan(0.002 + backS - 2 * stepS);
  expect(step.outsideUntilS - step.startS).toBeLessThan(0.002 + backS + 2 * stepS);
});
it('takes a servo move for the dip, never for the recovery', () => {
  const { events, run, begin } = watch();
  begin(Number.NaN);
  run(0.01, 4.5);
  expect(events.lowest()!.lowestV).toBeCloseTo(4.5, 3);
  expect(events.lowestStep()).toBeNull();
});
it('ends an event after a second', () => {
  const { events, run, begin } = watch();
  begin(5.9);
  run(1.01, 5.9);
  run(0.1, 0);
  expect(events.lowest()!.lowestV).toBeCloseTo(5.9, 2);
});
