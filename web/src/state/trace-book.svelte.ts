// SPDX-License-Identifier: MIT
// The columns of one run as they arrive, for the charts: growing typed arrays outside of reactive state, and
// one version number that says when to draw again.
import type { Trace } from '../worker/messages.ts';

export interface TapColumns {
  readonly tap: string;
  readonly unit: string;
  timeS: Float64Array;
  value: Float64Array;
  length: number;
  /** Over all values inside the tap's range; least above most while there are none. */
  least: number;
  most: number;
}
export interface Gap {
  readonly fromS: number;
  readonly toS: number;
}
export interface TraceMark {
  readonly atS: number;
  readonly label: string;
}

function grown(old: Float64Array, needed: number): Float64Array {
  if (needed <= old.length) return old;
  const bigger = new Float64Array(Math.max(needed, old.length * 2, 1024));
  bigger.set(old);
  return bigger;
}
function widen(column: TapColumns, value: number): void {
  if (value < column.least) column.least = value;
  if (value > column.most) column.most = value;
}
function fresh(tap: string, unit: string): TapColumns {
  const [timeS, value] = [new Float64Array(0), new Float64Array(0)];
  return { tap, unit, timeS, value, length: 0, least: Infinity, most: -Infinity };
}

export class TraceBook {
  #version = $state(0);
  #columns = new Map<string, TapColumns>();
  #gaps: readonly Gap[] = [];
  #marks: readonly TraceMark[] = [];

  /** Read inside an effect to be called again when columns grew. */
  get version(): number {
    return this.#version;
  }
  get taps(): TapColumns[] {
    return [...this.#columns.values()];
  }
  /** Of one tap; empty ones where it was not recorded. */
  columns(tap: string): TapColumns {
    return this.#columns.get(tap) ?? fresh(tap, '');
  }
  /** Rig time of the newest value, seconds since the run began. */
  get latestS(): number {
    void this.#version;
    return Math.max(0, ...this.taps.map((each) => each.timeS[each.length - 1] ?? 0));
  }
  get gaps(): readonly Gap[] {
    return this.#gaps;
  }
  get marks(): readonly TraceMark[] {
    return this.#marks;
  }
  clear(): void {
    this.#columns = new Map();
    this.#gaps = [];
    this.#marks = [];
    this.#version += 1;
  }
  /** `fresh` columns stand in the place of those before. */
  append(trace: Trace, fresh: boolean): void {
    if (fresh) this.#columns = new Map();
    for (const part of trace.columns) this.#extend(part);
    this.#gaps = trace.gaps;
    this.#marks = trace.marks;
    this.#version += 1;
  }
  #extend(part: Trace['columns'][number]): void {
    const column = this.#columns.get(part.tap) ?? fresh(part.tap, part.unit);
    this.#columns.set(part.tap, column);
    const needed = column.length + part.timeS.length;
    column.timeS = grown(column.timeS, needed);
    column.value = grown(column.value, needed);
    column.timeS.set(part.timeS, column.length);
    column.value.set(part.value, column.length);
    column.length = needed;
    for (const value of part.value) widen(column, value);
  }
}
