// SPDX-License-Identifier: MIT
// Which channel follows the wheel and which the trigger, and how wide its pulses are in each position. Pure.
import { difference, linear, widened, type Quantity } from '#core/measurements/quantity';
import { widthOf } from '#core/measurements/pulse-reading';
import { rectangular, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { SampleStore } from '#core/samples/sample-store';
import type { Evidence, Position } from './evidence.ts';

export type Channel = 0 | 1;
/** A channel follows when it moves by more than this, us; trims and mixes move less (from memory). */
const followsUs = 100;

export interface Heard {
  readonly wheelOn: Channel;
  readonly triggerOn: Channel;
  width(channel: Channel, position: Position): Quantity;
  /** Mean of both times at rest; how far they differ is in it. */
  rest(channel: Channel): Quantity;
}
export function heardPositions({ held }: Evidence, samples: SampleStore): Heard {
  const width = (channel: Channel, position: Position): Quantity => {
    const found = held.find((one) => one.position === position);
    if (!found) throw new NotMeasurable(`The run ended before "${position}" was heard. Run again.`);
    return widthOf(samples, found.channels[channel]);
  };
  const moved = (from: Position, to: Position) => (channel: Channel) =>
    Math.abs(difference(width(channel, to), width(channel, from)).value);
  return {
    wheelOn: follower('wheel', moved('left', 'right')),
    triggerOn: follower('trigger', moved('brake', 'full')),
    width,
    rest: (channel) => restOf(width(channel, 'rest'), width(channel, 'rest again'), channel),
  };
}
function follower(what: string, movedUs: (channel: Channel) => number): Channel {
  const follows = ([0, 1] as const).filter((channel) => movedUs(channel) > followsUs);
  if (follows.length === 1) return follows[0];
  const told = follows.length === 0 ? 'Neither channel' : 'Both channels';
  throw new NotMeasurable(
    `${told} followed the ${what} by more than ${followsUs} µs. Look at the Y-leads, at end points and mixes of the radio, and hold each position until the next is asked, then run again.`,
  );
}
function restOf(first: Quantity, again: Quantity, channel: Channel): Quantity {
  const both = linear([
    [0.5, first],
    [0.5, again],
  ]);
  const apart = Math.abs(difference(first, again).value) / 2;
  return widened(
    both,
    typeB(`rest ${channel}`, 'return to rest', 'difference of the two times at rest'),
    rectangular(apart),
  );
}
