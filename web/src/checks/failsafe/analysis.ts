// SPDX-License-Identifier: MIT
// failsafe: how long after the loss of the transmitter the throttle channel is at neutral or brake for good, where it
// stands a second after, and how far it opens while the link comes back. Pure.
import { mean } from 'simple-statistics';
import { guarded, measured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { framesOf, pulsesIn } from '#core/measurements/pulse-train';
import { uncertain } from '#core/measurements/quantity';
import { clockLine, rectangular, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import { unpowered } from '../receiver-power.ts';
import type { Evidence, Known } from './evidence.ts';
import {
  openPerCent,
  placeQuantity,
  placesOf,
  scaleOf,
  type Place,
  type Scale,
} from './throttle-position.ts';

export const results = [
  { id: 'fail-safe-time', title: 'Throttle closed after the loss', unit: 's' },
  { id: 'throttle-after-loss', title: 'Throttle a second after the loss', unit: '%' },
  { id: 'throttle-on-return', title: 'Throttle at most while the link comes back', unit: '%' },
] as const;
/** A person confirms so much before or after the switch went over, s; from memory. */
const handS = 0.3;
/** Between a person's word and the newest block, s. */
const blockS = 0.02;
/** The place after the loss is read over this, from a second on. */
const afterS = { from: 1, length: 0.4 };
/** Pulses in a row that count as an opening. */
const inARow = 5;
type Input = AnalysisInput<Evidence>;

interface Watched {
  readonly input: Input;
  readonly known: Known;
  readonly scale: Scale;
}
export function analyse(input: Input): readonly Finding[] {
  return guarded(results, () => {
    const { powered, known } = input.evidence;
    if (!powered || !known) throw new NotMeasurable(unpowered);
    const watched = { input, known, scale: scaleOf(input.samples, known) };
    const one = (k: number, make: () => Finding) => guarded([results[k]], () => [make()]);
    return [
      ...one(0, () => timeOf(watched)),
      ...one(1, () => placeAfter(watched)),
      ...one(2, () => comebackOf(watched)),
    ];
  });
}
function timeOf({ input, known, scale }: Watched): Finding {
  const places = afterLoss({ input, known, scale });
  const open = places.findLastIndex(({ perCent }) => perCent > openPerCent);
  if (open === places.length - 1)
    throw new NotMeasurable(
      `The throttle still stood at ${places[open].perCent.toFixed(0)} % when the watch ended, ${(known.loss.toS - known.lostS).toFixed(1)} s after the loss.`,
    );
  const { clock } = input.samples;
  const frameS = mean(framesOf(pulsesIn(input.samples.edges(known.rest.fromS, known.rest.toS))));
  const closedS = (places[open + 1]?.atS ?? known.lostS) - frameS / 2;
  const value = Math.max(0, (closedS - known.lostS - blockS / 2) * clock.ratio);
  const time = uncertain(value, [
    [typeB('hand', 'moment at which the transmitter went off', 'from memory'), rectangular(handS)],
    [typeB('frame', 'a frame before it shows', 'computed'), rectangular(frameS / 2)],
    [typeB('block', 'time of the newest block', 'computed'), rectangular(blockS / 2)],
    clockLine(clock, value),
  ]);
  return measured(results[0], time, {
    formula: `Time from the person's word until the throttle channel stays below ${openPerCent} % for good.`,
    evidence: [{ ...known.loss, taps: [] }],
  });
}
/** Pulses from the loss on; a receiver that stops them leaves the motor to the controller's own rule. */
function afterLoss({ input, known, scale }: Watched): Place[] {
  const { toS } = known.loss;
  const places = placesOf(input.samples, { fromS: known.lostS, toS }, scale);
  const lastS = places.at(-1)?.atS ?? known.lostS;
  if (toS - lastS < 0.2) return places;
  throw new NotMeasurable(
    `The receiver stopped its throttle pulses ${(lastS - known.lostS).toFixed(1)} s after the loss. Then only the speed controller's own rule stops the motor: the fail-safe test of "Motor: no-load current and speed" measures that. Better set the receiver to neutral or brake.`,
  );
}
function placeAfter(watched: Watched): Finding {
  const { known, scale } = watched;
  const fromS = known.lostS + afterS.from;
  const then = afterLoss(watched).filter(({ atS }) => atS >= fromS && atS < fromS + afterS.length);
  if (then.length < inARow)
    throw new NotMeasurable('Too few pulses came a second after the loss. Run again.');
  const value = mean(then.map(({ perCent }) => perCent));
  return measured(results[1], placeQuantity(value, scale, (3 * scale.noise) / Math.sqrt(then.length)), {
    formula:
      'Mean place of the throttle channel from 1.0 to 1.4 s after the loss; 0 is rest, below 0 is brake.',
    evidence: [{ fromS, toS: fromS + afterS.length, taps: [] }],
    notes:
      value > openPerCent
        ? [
            'The receiver goes on with the throttle: set its fail-safe to neutral or brake before the car drives.',
          ]
        : [],
  });
}
function comebackOf({ input, known, scale }: Watched): Finding {
  const places = placesOf(input.samples, known.comeback, scale);
  if (places.length < 10 || known.comeback.toS - places[places.length - 1].atS > 0.2)
    throw new NotMeasurable(
      'The throttle pulses did not come back within 3 s. Check that the transmitter is on and bound, then run again.',
    );
  const rows = places
    .slice(inARow - 1)
    .map((_, k) => mean(places.slice(k, k + inARow).map(({ perCent }) => perCent)));
  // The highest of many means lies up to four of their deviations above what they all stand at.
  const above = (2 * scale.noise) / Math.sqrt(inARow);
  const value = Math.max(...rows) - above;
  return measured(results[2], placeQuantity(value, scale, above), {
    formula: `Highest mean of ${inARow} pulses in a row while the transmitter came on, trigger at rest, less what jitter alone brings.`,
    evidence: [{ ...known.comeback, taps: [] }],
    notes: value > openPerCent ? ['The throttle opens by itself when the link comes back.'] : [],
  });
}
