// SPDX-License-Identifier: MIT
// A diagnosis as lines of text, for the command line, reports and plans.
import { namedOrId } from '../titles/check-titles.ts';
import type { Diagnosis, Evidence, RankedCause } from './diagnosis.ts';

/** Evidence told for one cause and side. */
const mostLines = 3;
/** Causes below this get one line together. */
const toldFrom = 0.02;

export function diagnosisText({ ranked, heard, next }: Diagnosis): string[] {
  const told = ranked.filter(({ probability }) => probability >= toldFrom);
  const out = ranked.filter(({ probability }) => probability < toldFrom);
  return [
    heard.length === 0
      ? 'No check has told anything of this servo yet: these are the chances before any.'
      : `Why the servo runs hot, from ${heard.map(namedOrId).join(', ')}:`,
    ...told.flatMap(causeLines),
    ...(out.length > 0 ? [`ruled out: ${out.map(({ cause }) => lower(cause.title)).join('; ')}`] : []),
    ...nextLines(next),
  ];
}
function causeLines({ cause, probability, likely, evidenceFor, evidenceAgainst }: RankedCause): string[] {
  return [
    `${percent(probability)} ${likely}: ${cause.title}.`,
    ...(evidenceFor.length + evidenceAgainst.length === 0
      ? ['    No figure speaks clearly for or against it.']
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
  if (!best) return ['No check that is left would tell more.'];
  const then = second ? `; then ${namedOrId(second.check)} (${second.bits.toFixed(2)})` : '';
  return [
    `Next: ${namedOrId(best.check)} (${best.check}) would tell most, ${best.bits.toFixed(2)} bits of what is open${then}.`,
  ];
}
const percent = (p: number): string => `${(100 * p).toFixed(p < 0.1 ? 1 : 0)} %`;
const lower = (title: string): string => title.charAt(0).toLowerCase() + title.slice(1);
