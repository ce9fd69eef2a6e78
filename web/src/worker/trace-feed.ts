// SPDX-License-Identifier: MIT
// From a run's sample store to the columns a chart draws: what came since the last call, tap by tap, and the
// speed from the Hall edges. It scales nothing itself and keeps no samples.
import { withEventMarks } from '#core/record/event-marks';
import type { RunRecord } from '#core/record/run-record';
import type { RigDescription } from '#core/samples/rig-description';
import type { SampleStore } from '#core/samples/sample-store';
import type { Trace } from './messages.ts';

type Columns = Trace['columns'][number];
type Events = RunRecord['events'];
/** Values of speed shown no closer together than this. */
const speedEveryS = 0.005;

/** Same-going edges of one Hall line lie one electrical turn apart. */
export function speedColumns(edges: Float64Array, polePairs: number): Columns | null {
  const timeS: number[] = [];
  const value: number[] = [];
  for (let index = 2; index < edges.length; index += 1) {
    if (timeS.length > 0 && edges[index] - timeS[timeS.length - 1] < speedEveryS) continue;
    timeS.push(edges[index]);
    value.push(60 / (polePairs * (edges[index] - edges[index - 2])));
  }
  if (timeS.length === 0) return null;
  return { tap: 'speed', unit: 'rpm', timeS: Float64Array.from(timeS), value: Float64Array.from(value) };
}
function tapColumns(samples: SampleStore, rig: RigDescription, fromS: number, toS: number): Columns[] {
  return rig.descriptor.taps.flatMap(({ id, unit }) => {
    const { timeS, value } = samples.series(id, fromS, toS);
    return timeS.length > 0 ? [{ tap: id, unit, timeS, value }] : [];
  });
}
export class TraceFeed {
  private toS = 0;

  constructor(
    private readonly runId: string,
    private readonly rig: RigDescription,
    private readonly polePairs: number,
  ) {}
  /** What came since the last call; null when nothing did. */
  next(samples: SampleStore, events: Events): Trace | null {
    const untilS = samples.latestS;
    if (untilS <= this.toS) return null;
    const trace = this.between(samples, events, this.toS, untilS);
    this.toS = untilS;
    return trace;
  }
  all(samples: SampleStore, events: Events): Trace {
    return this.between(samples, events, 0, samples.latestS + 1);
  }
  private between(samples: SampleStore, events: Events, fromS: number, toS: number): Trace {
    const columns = tapColumns(samples, this.rig, fromS, toS);
    const speed = speedColumns(samples.edges(fromS, toS), this.polePairs);
    return {
      runId: this.runId,
      columns: speed ? [...columns, speed] : columns,
      gaps: samples.gaps.map((gap) => ({ fromS: gap.fromS, toS: gap.toS })),
      marks: withEventMarks(samples.marks, events),
    };
  }
}
