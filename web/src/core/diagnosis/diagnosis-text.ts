// SPDX-License-Identifier: MIT
// A diagnosis as lines of text, for the command line, reports and plans.
import { namedOrId } from '../titles/check-titles.ts';
import { chanceWords, type Diagnosis, type Evidence, type RankedCause } from './diagnosis.ts';

/** Evidence told for one cause and side. */
const mostLines = 3;

export function diagnosisText({ ranked, heard, next }: Diagnosis): string[] {
  const told = ranked.filter(({ likely }) => likely !== 'ruled out');
  const out = ranked.filter(({ likely }) => likely === 'ruled out');
  return [
    heard.length === 0
      ? 'No check has told anything of this servo yet: these are the chances before any check.'
      : `Why the servo runs hot, from ${heard.map(namedOrId).join(', ')}:`,
    ...told.flatMap(causeLines),
    ...(out.length > 0 ? [ruledOutWords(out.map(({ cause }) => cause.title))] : []),
    ...nextLines(next),
  ];
}
function causeLines({ cause, probability, likely, evidenceFor, evidenceAgainst }: RankedCause): string[] {
  return [
    `${capital(likely)} (${chanceWords(probability)}): ${lower(cause.title)}.`,
    ...(evidenceFor.length + evidenceAgainst.length === 0
      ? ['    No figure so far speaks clearly for or against it.']
      : []),
    ...evidenceLines('for', evidenceFor),
    ...evidenceLines('against', evidenceAgainst),
    `    ${cause.todo}`,
  ];
}
const evidenceLines = (side: string, all: readonly Evidence[]): string[] =>
  all.slice(0, mostLines).map(({ words, check }) => `    ${side}: ${words} (${namedOrId(check)})`);

function nextLines(next: Diagnosis['next']): string[] {
  const [best, second] = next;
  if (!best) return ['No check that is left would tell much more.'];
  const then = second ? `; after it ${namedOrId(second.check)} (${second.check})` : '';
  return [`Next: ${namedOrId(best.check)} (${best.check}) would tell most${then}.`];
}
const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
const lower = (title: string): string => title.charAt(0).toLowerCase() + title.slice(1);
/** The causes that the checks speak against, in one sentence. */
export const ruledOutWords = (titles: readonly string[]): string =>
  `Ruled out, as far as these checks tell: ${titles.map(lower).join('; ')}.`;
