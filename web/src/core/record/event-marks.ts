// SPDX-License-Identifier: MIT
// Which of a run's events are marked on its charts besides the marks that the check's procedure made: going live, a
// trip. Pure.

interface Mark {
  readonly atS: number;
  readonly label: string;
}
interface Event {
  readonly atS: number;
  readonly kind: string;
  readonly words: string;
}
/** Null: not marked. */
export function eventLabel({ kind, words }: Pick<Event, 'kind' | 'words'>): string | null {
  if (kind === 'trip') return 'trip';
  return kind === 'state' && words === 'live' ? 'live' : null;
}
/** The procedure's marks and those of the events, in the order of time. */
export function withEventMarks(marks: readonly Mark[], events: readonly Event[]): Mark[] {
  const marked = events.flatMap((event) => {
    const label = eventLabel(event);
    return label ? [{ atS: event.atS, label }] : [];
  });
  return [...marks.map(({ atS, label }) => ({ atS, label })), ...marked].sort((a, b) => a.atS - b.atS);
}
