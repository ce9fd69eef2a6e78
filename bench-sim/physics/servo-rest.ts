// SPDX-License-Identifier: MIT
// Watches a servo at rest: what it draws while its pulse stays the same near the centre, how much that alternates,
// and how many pulses of current a second it comes in. Kept for the longest such rest. It measures nothing at a tap.

export interface RestSeen {
  readonly lengthS: number;
  readonly meanA: number;
  /** r.m.s. of what alternates. */
  readonly alternatingA: number;
  readonly pulsesPerS: number;
}
interface Watched {
  readonly chargeC: number;
  readonly squareA2s: number;
  readonly plugA: number;
}
const nearCentreS = 60e-6;
/** Less than the rig's smallest step of half a microsecond. */
const samePulseS = 0.3e-6;
/** A servo has arrived and settled by then. */
const settleS = 0.6;
const longestS = 3;
const shortestS = 0.2;
/** Below this nothing hunts, and a count of pulses would be one of nothing. */
const quietA = 1e-3;

export class ServoRest {
  private kept: RestSeen | null = null;
  private pulseS: number | null = null;
  private sinceS = 0;
  private lengthS = 0;
  private startC = 0;
  private startA2s = 0;
  private endC = 0;
  private endA2s = 0;
  private lineA: number[] = [];

  /** Once a tick. */
  tick(servo: Watched, pulseS: number | null, tickS: number): void {
    if (pulseS === null || this.pulseS === null || Math.abs(pulseS - this.pulseS) > samePulseS)
      return this.begin(pulseS);
    this.sinceS += tickS;
    if (this.sinceS < settleS || this.lengthS >= longestS || Math.abs(pulseS - 1.5e-3) > nearCentreS) return;
    if (this.lengthS === 0) [this.startC, this.startA2s] = [servo.chargeC, servo.squareA2s];
    else this.take(servo);
    this.lengthS += tickS;
  }
  /** Null while there was none of 0.2 s. */
  longest(): RestSeen | null {
    this.keep();
    return this.kept;
  }
  private take({ chargeC, squareA2s, plugA }: Watched): void {
    this.endC = chargeC;
    this.endA2s = squareA2s;
    this.lineA.push(plugA);
  }
  private begin(pulseS: number | null): void {
    if (this.lengthS > 0) this.keep();
    this.pulseS = pulseS;
    this.sinceS = this.lengthS = 0;
    this.lineA = [];
  }
  private keep(): void {
    if (this.lengthS < Math.max(shortestS, this.kept?.lengthS ?? 0)) return;
    const { lengthS, lineA } = this;
    const overS = (lengthS * lineA.length) / (lineA.length + 1);
    const meanA = (this.endC - this.startC) / overS;
    const alternatingA = Math.sqrt(Math.max(0, (this.endA2s - this.startA2s) / overS - meanA ** 2));
    const rises = alternatingA < quietA ? [] : risesThrough(lineA, meanA, alternatingA / 2);
    const perTick = (rises.length - 1) / (rises[rises.length - 1] - rises[0]);
    const pulsesPerS = rises.length < 3 ? 0 : (perTick * lineA.length) / overS;
    this.kept = { lengthS, meanA, alternatingA, pulsesPerS };
  }
}
/** Where a line rises from below `middle - half` to above `middle + half`. Counted here by itself: a truth that shared
 *  code with the check would share its slips. */
function risesThrough(line: readonly number[], middle: number, half: number): number[] {
  let below = false;
  const rises: number[] = [];
  line.forEach((value, k) => {
    if (below && value > middle + half) rises.push(k);
    below = value < middle - half || (below && value <= middle + half);
  });
  return rises;
}
