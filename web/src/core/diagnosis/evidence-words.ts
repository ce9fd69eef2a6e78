// SPDX-License-Identifier: MIT
// What a feature says, as a sentence: what was seen, and what is usual.
import type { Feature } from './features.ts';
import type { Spread } from './servo-model-form.ts';

/** The usual range that is told, in spreads of servos in order. */
const usualSpreads = 2;

export function evidenceWords(feature: Feature, value: number, { middle, spread }: Spread): string {
  const half = usualSpreads * spread;
  const seen = feature.tell(feature.say(value));
  const usual = rangeWords(feature, middle - half, middle + half);
  if (usual === feature.say(value)) return `${seen}, as usual.`;
  const about = figureOf(feature.say(middle));
  const oneSided = usual === about || middle - half <= (feature.least ?? -Infinity);
  return `${seen}; usual is ${oneSided ? usual : `${about} (${usual})`}.`;
}
/** "85 %" of "85 % of its stall current". */
const figureOf = (said: string): string => said.split(' of ')[0];
/** "0.8 to 1.4 times", the unit once; "up to 1.4 times" where nothing lies below. */
function rangeWords({ say, least = -Infinity }: Feature, low: number, high: number): string {
  const [from, to] = [low, high].map((end) => figureOf(say(end)));
  if (from === to) return to;
  if (low <= least) return `up to ${to}`;
  const unit = to.slice(to.indexOf(' '));
  return `${from.endsWith(unit) ? from.slice(0, -unit.length) : from} to ${to}`;
}
