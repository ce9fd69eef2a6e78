// SPDX-License-Identifier: MIT
// Nothing is switched on but the supply of the Hall sensors: the person turns the rotor by hand, both ways, then turns
// it on while moving the cable. An order that comes out the other way round is asked for once more before it counts.
import type { Bench, ScanPlan } from '../check.ts';
import type { Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';
import { orderOf, stepsIfWhole } from './hall-steps.ts';

const plan: ScanPlan = {
  fast: ['packVoltage', 'railVoltage', 'controllerVoltage', 'packCurrentNarrow'],
  slow: 'multiplexer',
};
const turns = 8;
/** The step in which the cable is moved. */
const moving = 3;
/** Each stands at the end of its step. */
const marks = ['turned', 'turned back', 'cable moved'];
const tellEveryS = 1;
/** A person may be slow to begin; with dead lines fewer edges come. */
const longestS = 30;
const leastS = 8;
const firstTry =
  'Turn the rotor by hand in its running direction, about one turn a second, and keep on. Usual is anticlockwise, looking at the shaft (common practice, no source).';
const secondTry =
  'The order was that of the opposite direction. Look which way this motor drives the car, then turn the rotor by hand in that direction once more, and keep on.';
/** Edges of the six states in one electrical turn. */
const edgesATurn = 6;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.stream(plan);
  await bench.turn('hallSupply', true);
  await bench.wait(0.2);
  const forward = await turned(bench, 1, firstTry);
  const again = isReversed(bench, forward) ? await turned(bench, 1, secondTry) : forward;
  const backward = await turned(
    bench,
    2,
    'Now turn the rotor by hand the other way, as slowly, and keep on.',
  );
  const moved = await turned(
    bench,
    moving,
    'Turn the rotor on in its running direction with one hand; with the other move the sensor cable at both plugs and along its length.',
  );
  await bench.ask('Take your hands off the rotor and the cable.');
  await bench.turn('hallSupply', false);
  return { forward: again, backward, moved };
}
async function turned(bench: Bench, step: number, words: string): Promise<Stretch> {
  bench.progress({ step, of: 3, words, leftS: leastS * (4 - step) });
  await bench.ask(words);
  const fromS = bench.now();
  const wanted = turns * edgesATurn * bench.car.motor.polePairs;
  let toldS = fromS;
  await bench.waitFor((samples) => {
    if (step === moving && bench.now() - toldS >= tellEveryS) {
      toldS = bench.now();
      tellDropOuts(bench, { fromS, toS: toldS });
    }
    return bench.now() - fromS >= leastS && edgesSince(samples, fromS, bench.now()) >= wanted;
  }, longestS);
  bench.mark(marks[step - 1]);
  return { fromS, toS: bench.now() };
}
/** Live, so that the person finds the place of the cable that does it. */
function tellDropOuts(bench: Bench, stretch: Stretch): void {
  const pairs = stepsIfWhole(bench.samples, stretch)?.pairs ?? 0;
  const count = pairs === 0 ? 'no drop-out' : `${pairs} drop-outs`;
  const words = `Turning and moving the cable: ${count} so far.`;
  bench.progress({ step: moving, of: 3, words, leftS: leastS });
}
function edgesSince(samples: Bench['samples'], fromS: number, toS: number): number {
  const { edgesA, edgesB, edgesC } = samples.status(fromS, toS);
  return [edgesA, edgesB, edgesC].reduce(
    (sum, counts) => sum + (counts.length > 0 ? counts[counts.length - 1] - counts[0] : 0),
    0,
  );
}
function isReversed(bench: Bench, stretch: Stretch): boolean {
  const seen = stepsIfWhole(bench.samples, stretch);
  if (!seen) return false;
  const { inOrder, against } = orderOf(seen);
  return against > 4 * inOrder;
}
