// SPDX-License-Identifier: MIT
// Puts the blocks of one burst together: codes by index, lost ones NaN, the sample at which the marked action
// fired. It sends nothing.
import { eventCode, wire } from '#protocol/codes';
import type { AnswerTo } from './command-queue.ts';

export class BurstCollector {
  readonly codes: Float64Array;
  actionSample: number | null = null;
  /** Rig tick at which sample 0 started, null before the first block. */
  startTick: number | null = null;
  /** Index after the newest sample. */
  reached = 0;

  constructor(
    readonly channel: number,
    readonly samples: number,
  ) {
    this.codes = new Float64Array(samples).fill(Number.NaN);
  }
  push({ first, tick, channel, samples }: AnswerTo<'burstBlock'>): void {
    if (channel !== this.channel || first >= this.samples) return;
    this.startTick ??= (tick - first * wire.conversionTicks) >>> 0;
    const count = Math.min(samples.length, this.samples - first);
    for (let i = 0; i < count; i++) this.codes[first + i] = samples[i];
    this.reached = Math.max(this.reached, first + count);
  }
  event({ kind, value }: AnswerTo<'event'>): void {
    if (kind === eventCode.action) this.actionSample = value;
  }
  get whole(): boolean {
    return this.reached >= this.samples;
  }
}
