// SPDX-License-Identifier: MIT
// Readings of a meter that a person gives wrong: asked for again with the reason, insisted on, given up.
import { describe, expect, it } from 'vitest';
import { CalibrationRefused } from '#core/calibration/calibration-refused';
import { usualMeter } from '#core/calibration/meter';
import { readMeter, type MeterQuestion } from './calibration-hands.ts';

const question = { words: 'Enter V.', quantity: 'voltage', place: 'source', taps: [] } as const;
/** A person who gives these numbers, one a question, and a tap that is near 7.6 V only. */
function person(...given: number[]) {
  const asked: MeterQuestion[] = [];
  const read = (wanted: MeterQuestion) => {
    asked.push(wanted);
    return Promise.resolve(given[asked.length - 1]);
  };
  const near = (value: number) => {
    if (Math.abs(value - 7.6) > 0.2) throw new CalibrationRefused('implausiblePoint', 'Far from the tap.');
  };
  const hands = { act: () => Promise.resolve(), read };
  return { asked, answer: readMeter({ hands, meter: usualMeter }, question, near) };
}
describe('a reading', () => {
  it('that is near is taken at once', async () => {
    const { asked, answer } = person(7.61);
    expect(await answer).toBe(7.61);
    expect(asked.map(({ refused }) => refused)).toEqual([null]);
  });
  it('that jumps is asked for again with the reason', async () => {
    const { asked, answer } = person(6.71, 7.61);
    expect(await answer).toBe(7.61);
    expect(asked[1].refused).toBe('Far from the tap.');
  });
  it('that jumps is taken when it is entered twice alike', async () => {
    expect(await person(6.71, 6.71).answer).toBe(6.71);
  });
  it('that is no number is never taken, however often', async () => {
    await expect(person(Number.NaN, Number.NaN, Number.NaN).answer).rejects.toThrow(/is not a number/);
  });
  it('that jumps another way each time is given up', async () => {
    await expect(person(6.1, 6.2, 6.3).answer).rejects.toThrow('Far from the tap.');
  });
});
