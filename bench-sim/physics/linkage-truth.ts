// SPDX-License-Identifier: MIT
// True values of the results that a servo's linkage has: where the steering stops, as pulse widths and angles.
import { stopRad } from './linkage.ts';
import type { RailEvents } from './rail-events.ts';
import type { ScrubWatch } from './scrub-watch.ts';
import type { Servo } from './servo.ts';
import type { CarParameters, RadioParameters } from './parameters.ts';

interface Reached {
  readonly car: CarParameters;
  readonly servo: Servo;
  readonly scrub: ScrubWatch;
  readonly events: RailEvents;
}
const neutralS = 1.5e-3;

/** Towards which pulses the radio turns its wheel left. */
export const leftSide = ({ radio }: CarParameters): 'short' | 'long' =>
  radio.steeringS[0] < radio.steeringS[1] ? 'short' : 'long';

/** What the moves on the tyres drew, as it happened; absent before the first. */
export function scrubTruth({ scrub, events }: Reached): Record<string, number> {
  const seen = scrub.seen();
  if (seen === null) return {};
  const lowest = events.lowest();
  return {
    'scrub-peak-current': seen.peakA,
    'scrub-current': seen.workA,
    'scrub-time': seen.workS,
    ...(lowest && { 'scrub-dip': lowest.lowestV }),
  };
}
/** The tightest of the ways in which the linkage was hitched so far; absent before. */
export function linkageTruth({ car, servo }: Reached): Record<string, number> {
  const ways = [...servo.linkage.seen].filter((how) => how !== 'off' && how !== 'tyres');
  if (ways.length === 0) return {};
  const { centreS, radPerS, linkage } = car.servo;
  const tightest = (side: 'short' | 'long') => Math.min(...ways.map((how) => stopRad(linkage, how, side)));
  const shortS = centreS - tightest('short') / radPerS;
  const longS = centreS + tightest('long') / radPerS;
  const [leftS, rightS] = leftSide(car) === 'short' ? [shortS, longS] : [longS, shortS];
  const degrees = (widthS: number) => (Math.abs(widthS - neutralS) * radPerS * 180) / Math.PI;
  const [left, right] = [degrees(leftS), degrees(rightS)];
  return {
    'end-point-left': leftS * 1e6,
    'end-point-right': rightS * 1e6,
    'travel-left': left,
    'travel-right': right,
    'travel-asymmetry': (100 * Math.abs(right - left)) / Math.max(right, left),
    ...settings(car.radio, leftS, rightS),
  };
}
/** Settings of the radio's end points, per cent, that give these widths. */
function settings(
  { steeringS: [fullLeftS, centreS, fullRightS] }: RadioParameters,
  leftS: number,
  rightS: number,
) {
  const left = (100 * (leftS - centreS)) / (fullLeftS - centreS);
  const right = (100 * (rightS - centreS)) / (fullRightS - centreS);
  return { 'setting-left': left, 'setting-right': right, 'travel-used': (left + right) / 2 };
}
