// SPDX-License-Identifier: MIT
// A kept record as a comparison needs it: its taps' values in time since the rig went live, cut at gaps. Pure.
import { withEventMarks } from '#core/record/event-marks';
import { readRecord, samplesOf } from '#core/record/record-reader';
import { tapTitle } from '#core/samples/tap-titles';

export interface ComparedTap {
  readonly tap: string;
  readonly title: string;
  readonly unit: string;
  /** Seconds since live; since the record's beginning where it never went live. */
  readonly timeS: Float64Array;
  readonly value: Float64Array;
}
export interface ComparedRun {
  readonly id: string;
  readonly taps: readonly ComparedTap[];
  /** Beginnings of gaps, seconds since live. */
  readonly gapsS: readonly number[];
  readonly live: boolean;
  /** The tap that its first result came from. */
  readonly telling: string | undefined;
}
/** Throws RecordError. */
export function comparedRun(text: string): ComparedRun {
  const record = readRecord(text);
  const samples = samplesOf(record);
  const live = withEventMarks(record.marks, record.events).find(({ label }) => label === 'live');
  const zeroS = live?.atS ?? 0;
  const taps = record.rig.descriptor.taps.flatMap(({ id, unit }) => {
    const { timeS, value } = samples.series(id, 0, Number.MAX_VALUE);
    const since = timeS.map((atS) => atS - zeroS);
    return value.length === 0 ? [] : [{ tap: id, title: tapTitle(id), unit, timeS: since, value }];
  });
  const telling = record.findings.flatMap((finding) => (finding.measured ? finding.evidence : []))[0]
    ?.taps[0];
  const gapsS = samples.gaps.map(({ fromS }) => fromS - zeroS);
  return { id: record.id, taps, gapsS, live: live !== undefined, telling };
}
