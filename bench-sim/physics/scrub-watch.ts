// SPDX-License-Identifier: MIT
// Watches what a servo draws while it moves the tyres: a line of current for each jump of its pulse, one mean a tick.
// It measures nothing at a tap and changes nothing.
import { median } from 'simple-statistics';

const jumpS = 100e-6;
/** 2 ms of the plant's steps of 8 us. */
const peakSteps = 250;
const longest = 480;
const span = { workFrom: 25, workTo: 70, rest: 50 } as const;
const riseShare = 0.3;

export interface Scrubbed {
  readonly peakA: number;
  readonly workA: number;
  readonly workS: number;
}
export class ScrubWatch {
  private readonly lines: number[][] = [];
  private pulseS: number | null = null;
  private chargeC = 0;
  private readonly recentA = new Float64Array(peakSteps);
  private at = 0;
  private sumA = 0;
  private mostA = 0;

  /** Once a step while the car stands on its tyres. */
  step(plugA: number): void {
    this.sumA += plugA - this.recentA[this.at];
    this.recentA[this.at] = plugA;
    this.at = this.at + 1 === peakSteps ? 0 : this.at + 1;
    if (this.sumA > this.mostA) this.mostA = this.sumA;
  }
  /** Once a tick of a millisecond while the car stands on its tyres. */
  tick(chargeC: number, pulseS: number | null, tickS: number): void {
    const jumped = pulseS !== null && this.pulseS !== null && Math.abs(pulseS - this.pulseS) > jumpS;
    if (jumped) this.lines.push([]);
    const line = this.lines.at(-1);
    if (line && line.length < longest) line.push((chargeC - this.chargeC) / tickS);
    this.chargeC = chargeC;
    this.pulseS = pulseS;
  }
  /** Greatest mean over 2 ms, mean of the others over all moves; null before the first whole one. */
  seen(): Scrubbed | null {
    const moves = this.lines.filter((line) => line.length === longest).map(scrubbed);
    if (moves.length === 0) return null;
    const mean = (of: (move: (typeof moves)[number]) => number) =>
      moves.reduce((sum, move) => sum + of(move), 0) / moves.length;
    return {
      peakA: this.mostA / peakSteps,
      workA: mean(({ workA }) => workA),
      workS: mean(({ workS }) => workS),
    };
  }
}
function scrubbed(line: readonly number[]): Omit<Scrubbed, 'peakA'> {
  const pairs = line.slice(1).map((a, k) => (a + line[k]) / 2);
  const peakA = Math.max(...pairs);
  const rise = pairs.findIndex((a) => a > riseShare * peakA);
  const workA = median(pairs.slice(rise + span.workFrom, rise + span.workTo));
  const restA = median(pairs.slice(-span.rest));
  const last = pairs.findLastIndex((a) => a > (workA + restA) / 2);
  return { workA, workS: (last - rise) * 1e-3 };
}
