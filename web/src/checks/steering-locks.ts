// SPDX-License-Identifier: MIT
// How far a car's steering may be driven from lock to lock: just inside its end points, as the servo's part tells
// them or the person does.
import { named } from '#core/titles/check-titles';
import type { Bench } from './check.ts';

export interface Locks {
  readonly lowUs: number;
  readonly highUs: number;
}
/** Inside the end points: what they may be off by, play, and the overshoot of a fast move. */
const insideUs = 30;
const usual = { lowUs: 1100, highUs: 1900 };

type Asking = Pick<Bench, 'askNumber' | 'car' | 'steeringRange'>;
/** Widens the session's limits where the end points need it. */
export async function askLocks(bench: Asking): Promise<Locks> {
  const { shortUs, longUs } = bench.car.servo.endPoints ?? (await askEnds(bench));
  const locks = { lowUs: shortUs + insideUs, highUs: longUs - insideUs };
  if (locks.lowUs < usual.lowUs || locks.highUs > usual.highUs)
    await bench.steeringRange(Math.min(usual.lowUs, locks.lowUs), Math.max(usual.highUs, locks.highUs));
  return locks;
}
async function askEnds(bench: Asking) {
  const ask = (side: string, min: number, max: number) =>
    bench.askNumber(`Which end point did ${named('servo-end-points')} find on the side of ${side} pulses?`, {
      unit: 'us',
      min,
      max,
    });
  return { shortUs: await ask('shorter', 830, 1450), longUs: await ask('longer', 1550, 2170) };
}
