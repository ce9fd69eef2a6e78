// SPDX-License-Identifier: MIT
// A kept record as a comparison needs it: its traces, marks and gaps in time since the rig went live. Pure.
import { readRecord, samplesOf } from '#core/record/record-reader';
import type { Trace } from '../worker/messages.ts';
import { TraceFeed } from '../worker/trace-feed.ts';
import { TraceBook } from './trace-book.svelte.ts';

export interface ComparedRun {
  readonly id: string;
  /** Seconds since live; since the record's beginning where it never went live. */
  readonly traces: TraceBook;
  readonly live: boolean;
  /** The tap that its first result came from. */
  readonly telling: string | undefined;
}
/** Throws RecordError. */
export function comparedRun(text: string): ComparedRun {
  const record = readRecord(text);
  const feed = new TraceFeed(record.id, record.rig, record.car.motor.polePairs);
  const whole = feed.all(samplesOf(record), record.events);
  const live = whole.marks.find(({ label }) => label === 'live');
  const traces = new TraceBook();
  traces.append(since(whole, live?.atS ?? 0), true);
  const telling = record.findings.flatMap((finding) => (finding.measured ? finding.evidence : []))[0]
    ?.taps[0];
  return { id: record.id, traces, live: live !== undefined, telling };
}
const since = ({ columns, gaps, marks, ...trace }: Trace, zeroS: number): Trace => ({
  ...trace,
  columns: columns.map(({ timeS, ...column }) => ({ ...column, timeS: timeS.map((atS) => atS - zeroS) })),
  gaps: gaps.map(({ fromS, toS }) => ({ fromS: fromS - zeroS, toS: toS - zeroS })),
  marks: marks.map(({ atS, label }) => ({ atS: atS - zeroS, label })),
});
