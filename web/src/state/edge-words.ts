// SPDX-License-Identifier: MIT
// The words of the bench edge: what rig, is data arriving, what is live. From facts to sentences, nothing else.
import type { RigCard, RigPhase } from '../worker/messages.ts';
import { figure } from './figures.ts';

export interface EdgeWords {
  readonly rig: string;
  readonly number: string;
  readonly data: string;
  readonly bold: string;
  readonly rest: string;
  readonly short: string;
}
/** The bench as the page sees it. */
interface Facts {
  readonly phase: RigPhase;
  readonly words: string;
  readonly rig: RigCard | null;
  readonly rowsPerS: number;
  readonly lostRows: number;
  readonly canSerial: boolean;
}
function rigWords({
  phase,
  rig,
  canSerial,
}: Facts): Pick<EdgeWords, 'rig' | 'number' | 'short'> & { data: string } {
  if (phase === 'none' || !rig) {
    const data = canSerial ? 'this browser can talk to one' : 'this browser cannot talk to one over USB';
    return { rig: phase === 'opening' ? 'Opening the rig' : 'No rig yet', number: '', data, short: 'No rig' };
  }
  const virtual = rig.way === 'virtual';
  return {
    rig: virtual ? 'Virtual rig' : 'Rig on USB',
    number: virtual ? ', the car is simulated' : `, number ${rig.serial}`,
    data: '',
    short: virtual ? 'Virtual' : 'USB',
  };
}
function dataWords({ phase, rowsPerS, lostRows }: Facts): string {
  if (phase === 'lost') return 'link lost';
  const lost = lostRows === 0 ? 'none lost' : `${figure(lostRows, 0)} lost`;
  return `${figure(Math.round(rowsPerS / 10) * 10, 0)} rows a second, ${lost}`;
}
const standing: Readonly<Record<RigPhase, readonly [string, string]>> = {
  none: ['', ''],
  opening: ['Opening.', ''],
  safe: ['Nothing is live.', 'Feed off, outputs safe.'],
  live: ['Live.', 'The feed is on and parts can move.'],
  tripped: ['Tripped, everything off.', ''],
  lost: ['Link lost.', 'The state of the rig is unknown: disconnect the pack.'],
};
export function edgeWords(facts: Facts): EdgeWords {
  const rig = rigWords(facts);
  const [bold, rest] = standing[facts.phase];
  return {
    ...rig,
    data: rig.data || dataWords(facts),
    bold,
    rest: facts.phase === 'tripped' ? facts.words : rest,
  };
}

/** The same from the page's own bench and ways. */
export const edgeOf = (
  { phase, words, rig, rowsPerS, lostRows }: Omit<Facts, 'canSerial'>,
  { canSerial }: Pick<Facts, 'canSerial'>,
): EdgeWords => edgeWords({ phase, words, rig, rowsPerS, lostRows, canSerial });
