// SPDX-License-Identifier: MIT
// Moves about 20, 40, 60 and 80 degrees long, each way, all from the short end of the travel. About each length there
// are six that differ by little: a servo takes its drive back only once in its own loop (3 ms, or 20 ms for a simple
// one), and lengths that differ meet that at all its phases. The
// way back is half a spacing longer or shorter than the way out, for the same reason.
import type { Bench } from '../check.ts';
import { comeDownTo } from '../come-down.ts';
import { centreUs, railPlan } from '../rail-plan.ts';
import { keepStretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

const lowUs = 1100;
/** Where the horn is read at the long end; it comes there from longer pulses. */
const readAtUs = 1820;
/** Within the steering limits of a session; at 0.1 degrees a microsecond about 20, 40, 60 and 80. */
const shortestUs = [210, 410, 610, 730] as const;
const apartUs = 12;
const ofEach = 6;
/** A move back is longer or shorter than the one out by this: halfway to the next length. */
const betweenUs = apartUs / 2;
/** Evenly spaced lengths may all meet a servo's own steps at the same phase: each is shifted by another part of the
 *  spacing, as the golden section spreads them. */
const shift = (index: number): number => (index * 0.6180339887) % 1;
export const lengthsUs = shortestUs.flatMap((us, group) =>
  Array.from(
    { length: ofEach },
    (_, k) => us + Math.round((k - shift(group * ofEach + k)) * 2 * apartUs) / 2,
  ),
);
/** A servo at half its usual speed still arrives (0.2 s for 60 degrees, from memory). */
const moveS = (lengthUs: number): number => 0.22 + lengthUs * 0.5e-3;
const of = shortestUs.length + 2;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.powerUp(railPlan);
  tell(bench, 1, 'The servo goes to one side.', 30);
  await bench.steer(lowUs, 0.8);
  const idle = await keepStretch(bench, 0.5, 0.4);
  const moves: Evidence['moves'] = [];
  for (const [index, lengthUs] of lengthsUs.entries()) {
    const step = Math.floor(index / ofEach);
    tell(bench, 2 + step, 'The servo moves there and back at full speed.', 27 - index);
    const [fromUs, backUs] = index % 2 === 0 ? [lowUs, lowUs + betweenUs] : [lowUs + betweenUs, lowUs];
    moves.push(await move(bench, fromUs + lengthUs, lengthUs, true));
    moves.push(await move(bench, backUs, fromUs + lengthUs - backUs, false));
  }
  tell(bench, of, 'The horn is read at both ends.', 3);
  const horn = bench.car.servo.measuredDegreesPerUs ? null : await readHorn(bench);
  await bench.steer(centreUs, 0.5);
  return { idle, moves, horn };
}
async function move(bench: Bench, toUs: number, lengthUs: number, longer: boolean) {
  const fromS = bench.now();
  await bench.steer(toUs, 0);
  await bench.wait(moveS(lengthUs));
  return { lengthUs, longer, stretch: { fromS, toS: bench.now() } };
}
/** Each end twice: reading and dead band make most of what the degrees are off by. */
async function readHorn(bench: Bench): Promise<Evidence['horn']> {
  const shortDegrees = await readAt(
    bench,
    lowUs,
    'The servo stands at one end. Lay a protractor under the horn and read its angle; leave the protractor where it is. Clockwise, seen from above the horn, is positive.',
  );
  const longDegrees = await readAt(
    bench,
    readAtUs,
    'The servo stands at the other end. Read the angle of the horn on the same protractor again. Clockwise is positive.',
  );
  const again = {
    shortDegrees: await readAt(bench, lowUs, 'Back at the first end. Read the protractor anew.'),
    longDegrees: await readAt(bench, readAtUs, 'At the other end once more. Read the protractor anew.'),
  };
  return { shortDegrees, longDegrees, apartUs: readAtUs - lowUs, again };
}
async function readAt(bench: Bench, widthUs: number, words: string): Promise<number> {
  await comeDownTo(bench, widthUs);
  return bench.askNumber(words, { unit: 'degrees', min: -180, max: 180 });
}
function tell(bench: Bench, step: number, words: string, leftS: number): void {
  bench.progress({ step, of, words, leftS });
}
