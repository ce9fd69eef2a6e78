// SPDX-License-Identifier: MIT
// What the worker tells the page of a session: its phase in a word, the rig as a card, a check as a card.
import type { Check } from '#checks/check';
import { calibratable } from '#session/calibration/calibrate';
import type { RigSession } from '#session/rig-session';
import type { SessionState } from '#session/session-state';
import type { CheckCard, RigCard, RigPhase } from './messages.ts';

const phases: Readonly<Record<SessionState['kind'], RigPhase>> = {
  none: 'none',
  connecting: 'opening',
  ready: 'safe',
  live: 'live',
  ending: 'live',
  tripped: 'tripped',
  lost: 'lost',
};
export function phaseOf(state: SessionState): { readonly phase: RigPhase; readonly words: string } {
  const words = state.kind === 'tripped' ? state.trip.words : state.kind === 'lost' ? state.words : '';
  return { phase: phases[state.kind], words };
}
export function rigCard(session: RigSession, way: RigCard['way']): RigCard {
  const { descriptor, store } = session.rig;
  return {
    way,
    board: descriptor.board,
    firmware: session.firmware,
    serial: store?.serial ?? 'not set',
    name: store?.name ?? '',
    taps: descriptor.taps.map(({ id, unit, low, high }) => ({ id, unit, low, high })),
    loadsOhm: [...descriptor.loadsOhm],
    description: { descriptor, store: session.keptStore },
    calibratable: calibratable(session.rig),
  };
}
export const checkCard = (check: Check): CheckCard => ({
  id: check.id,
  title: check.title,
  part: check.part,
  why: check.why,
  taps: [...check.needs.taps],
  outputs: [...check.needs.outputs],
  wiring: check.wiring.map(({ words, tap }) => ({ words, tap })),
  cautions: [...check.cautions],
  durationS: check.durationS,
  moves: check.moves,
  place: check.place,
  results: check.results.map(({ id, title, unit }) => ({ id, title, unit })),
});
