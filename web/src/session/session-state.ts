// SPDX-License-Identifier: MIT
// The states of a session as a table: which may follow which. A step outside it is a fault of this program.
import type { TripReport } from './trip-report.ts';

export type SessionState =
  | { readonly kind: 'none' }
  | { readonly kind: 'connecting' }
  /** Known, safe, perhaps streaming. */
  | { readonly kind: 'ready' }
  | { readonly kind: 'live' }
  /** The safe order runs. */
  | { readonly kind: 'ending' }
  | { readonly kind: 'tripped'; readonly trip: TripReport }
  | { readonly kind: 'lost'; readonly words: string };
export type SessionKind = SessionState['kind'];

const next: Readonly<Record<SessionKind, readonly SessionKind[]>> = {
  none: ['connecting'],
  connecting: ['ready', 'ending', 'tripped', 'lost', 'none'],
  ready: ['live', 'ending', 'tripped', 'lost', 'none'],
  live: ['ending', 'ready', 'tripped', 'lost', 'none'],
  ending: ['ready', 'tripped', 'lost', 'none'],
  tripped: ['ready', 'tripped', 'lost', 'none'],
  lost: ['none', 'connecting'],
};
export const mayFollow = (from: SessionKind, to: SessionKind): boolean => next[from].includes(to);
