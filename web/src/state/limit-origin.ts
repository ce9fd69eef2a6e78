// SPDX-License-Identifier: MIT
// Where a limit comes from, as a card shows it: its kind and source, how well it is known itself, what it stands in
// place of, what could not be used. From the limit alone, pure.
import type { Limit } from '#core/verdicts/limit';
import { figure } from './figures.ts';
import { limitRange } from './run-summary.ts';

export interface LimitOrigin {
  readonly kind: string;
  readonly range: string;
  readonly source: string;
  /** How well the limit itself is known; null where it is exact. */
  readonly doubt: string | null;
  readonly displaced: readonly string[];
  readonly refused: readonly string[];
}
const kinds: Readonly<Record<Limit['kind'], string>> = {
  rating: 'Rating of this part',
  baseline: 'Own baseline of this part',
  'common practice': 'Common practice, no source',
  published: 'Published',
  'own override': 'Your own limit',
};
/** A rectangle's half-width is root 3 times its standard uncertainty (JCGM 100:2008, 4.3.7). */
const halfOfShare = Math.sqrt(3);

/** `size` picks the unit as for the value itself. */
export function limitOrigin(limit: Limit, size: number): LimitOrigin {
  const { doubt, displaced = [], refused = [] } = limit;
  return {
    kind: kinds[limit.kind],
    range: limitRange(limit, size),
    source: sentence(limit.source),
    doubt: doubt
      ? `Known to ± ${figure(100 * halfOfShare * doubt.share, 0)} % itself: ${doubt.words}. That is counted on the side of the limit.`
      : null,
    displaced: displaced.map(sentence),
    refused: refused.map(sentence),
  };
}
/** Whether there is more to tell than kind and source. */
export const tellsMore = ({ doubt, displaced, refused }: LimitOrigin): boolean =>
  doubt !== null || displaced.length > 0 || refused.length > 0;

function sentence(words: string): string {
  const [first, rest] = [words.charAt(0).toUpperCase(), words.slice(1)];
  return /[.?!]$/.test(words) ? first + rest : `${first}${rest}.`;
}
