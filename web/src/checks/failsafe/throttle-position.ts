// SPDX-License-Identifier: MIT
// From pulses of the throttle channel to positions in per cent of the way from rest to full throttle; brake is below 0.
import { combined, uncertain, type Quantity } from '#core/measurements/quantity';
import { widthOf, pulsesOf } from '#core/measurements/pulse-reading';
import { rectangular, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable } from '#core/measurements/tap-reading';
import { mean, sampleStandardDeviation } from 'simple-statistics';
import type { Stretch } from '../stretch.ts';
import type { SampleStore } from '#core/samples/sample-store';
import type { Known } from './evidence.ts';

/** The trigger must move the channel at least so far, us. */
const leastUs = 100;
/** Beyond this a throttle is open, per cent. */
export const openPerCent = 5;

export interface Place {
  readonly atS: number;
  readonly perCent: number;
}
export interface Scale {
  readonly rest: Quantity;
  readonly full: Quantity;
  /** Standard deviation of one pulse's place, per cent. */
  readonly noise: number;
}
export function scaleOf(samples: SampleStore, { rest, full, half }: Known): Scale {
  const [atRest, atFull] = [widthOf(samples, rest), widthOf(samples, full)];
  const span = atFull.value - atRest.value;
  if (Math.abs(span) < leastUs)
    throw new NotMeasurable(
      'Channel 2 did not follow the trigger. Run "Radio: ranges at the receiver" first: the channels may be crossed.',
    );
  if (span < 0)
    throw new NotMeasurable(
      'The throttle channel is reversed, so neutral and brake would be taken for throttle. Turn it round at the radio, then run again.',
    );
  const noise = sampleStandardDeviation(pulsesOf(samples, rest).map(({ widthS }) => widthS * 1e6)) / span;
  const scale = { rest: atRest, full: atFull, noise: 100 * noise };
  const held = mean(placesOf(samples, half, scale).map(({ perCent }) => perCent));
  if (held > 4 * openPerCent) return scale;
  throw new NotMeasurable(
    `The trigger was held at ${Math.round(held) || 0} % before the loss, so a throttle that stays open could not be told. Hold it at about half, then run again.`,
  );
}
export function placesOf(samples: SampleStore, stretch: Stretch, { rest, full }: Scale): Place[] {
  const perCent = 100 / (full.value - rest.value);
  const us = 1e6 * samples.clock.ratio;
  return pulsesOf(samples, stretch).map(({ atS, widthS }) => ({
    atS,
    perCent: perCent * (widthS * us - rest.value),
  }));
}
/** A place in per cent with what the two ends of the scale and the pulses' own jitter leave open. */
export function placeQuantity(perCent: number, { rest, full }: Scale, jitterHalf: number): Quantity {
  const width = uncertain(rest.value + (perCent / 100) * (full.value - rest.value), []);
  const place = combined([width, rest, full], (w, r, f) => (100 * (w - r)) / (f - r));
  const jitter = uncertain(0, [
    [typeB('jitter', 'jitter of the pulses', 'statistics of this run'), rectangular(jitterHalf)],
  ]);
  return combined([place, jitter], (at, off) => at + off);
}
