// SPDX-License-Identifier: MIT
// What is measured on the emulated chip and never disturbs it: interrupt rates, latency and own time, sleep
// share, deepest stack. It reads the processor's state and changes none of it.
import type { Core } from './core.ts';
import { VECTOR_COUNT } from './registers.ts';

export interface InterruptFigures {
  readonly count: number;
  readonly worstLatencyCycles: number;
  readonly meanLatencyCycles: number;
  /** Longest run of the handler itself, nested handlers taken out, entry and return included. */
  readonly longestOwnCycles: number;
  readonly totalOwnCycles: number;
}
const NESTING = 32;

export class Instruments {
  /** Cycles spent asleep since the last clear. */
  idleCycles = 0;
  private clearedAt = 0;
  private readonly counts = new Float64Array(VECTOR_COUNT);
  private readonly worstLatency = new Float64Array(VECTOR_COUNT);
  private readonly sumLatency = new Float64Array(VECTOR_COUNT);
  private readonly longestOwn = new Float64Array(VECTOR_COUNT);
  private readonly sumOwn = new Float64Array(VECTOR_COUNT);
  private readonly openVector = new Int32Array(NESTING);
  private readonly openSince = new Float64Array(NESTING);
  private readonly openNested = new Float64Array(NESTING);
  private depth = 0;

  /** `staticEnd` is the first address above the program's variables. */
  constructor(
    private readonly core: Core,
    readonly staticEnd: number,
  ) {}

  /** Lowest stack pointer since the last clear. */
  get lowestStack(): number {
    return this.core.lowestStack;
  }
  /** Bytes of stack room never used. */
  get stackFree(): number {
    return this.lowestStack + 1 - this.staticEnd;
  }
  /** The stack reached the program's own variables. */
  get stackOverflowed(): boolean {
    return this.stackFree < 0;
  }

  entered(vector: number, cycle: number, since: number): void {
    const latency = cycle - since;
    this.counts[vector]++;
    this.sumLatency[vector] += latency;
    if (latency > this.worstLatency[vector]) this.worstLatency[vector] = latency;
    if (this.depth === NESTING) return;
    this.openVector[this.depth] = vector;
    this.openSince[this.depth] = cycle;
    this.openNested[this.depth++] = 0;
  }

  /** A return from interrupt. */
  left(cycle: number): void {
    if (this.depth === 0) return;
    const top = --this.depth;
    const vector = this.openVector[top];
    const whole = cycle - this.openSince[top];
    const own = whole - this.openNested[top];
    this.sumOwn[vector] += own;
    if (own > this.longestOwn[vector]) this.longestOwn[vector] = own;
    if (top > 0) this.openNested[top - 1] += whole;
  }

  wasReset(): void {
    this.depth = 0;
  }

  clear(cycle: number): void {
    this.clearedAt = cycle;
    this.idleCycles = 0;
    this.core.lowestStack = this.core.stackPointer;
    for (const figures of [this.counts, this.worstLatency, this.sumLatency, this.longestOwn, this.sumOwn]) {
      figures.fill(0);
    }
  }

  idleShare(cycle: number): number {
    return this.idleCycles / (cycle - this.clearedAt);
  }

  of(vector: number): InterruptFigures {
    const count = this.counts[vector];
    return {
      count,
      worstLatencyCycles: this.worstLatency[vector],
      meanLatencyCycles: count === 0 ? 0 : this.sumLatency[vector] / count,
      longestOwnCycles: this.longestOwn[vector],
      totalOwnCycles: this.sumOwn[vector],
    };
  }
}
