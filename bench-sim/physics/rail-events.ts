// SPDX-License-Identifier: MIT
// Watches the true rail, in a bandwidth of 3.4 kHz (one pole), through load steps and servo moves: the lowest
// voltage of each event, and how long a load step keeps the rail outside 2 % of its setting about the settled
// value. It changes nothing.

/** An event is over after this at the latest. */
const longestS = 1;
const bandwidthHz = 3400;

export interface RailEvent {
  lowestV: number;
  /** NaN for a servo move, which has no settled value. */
  settledV: number;
  startS: number;
  outsideUntilS: number;
}

export class RailEvents {
  private hardest: RailEvent | null = null;
  private hardestStep: RailEvent | null = null;
  private current: RailEvent | null = null;
  private smoothV = 0;
  private readonly follow: number;
  private readonly band: number;

  constructor(settingV: number, stepS: number) {
    this.band = 0.02 * settingV;
    this.follow = 1 - Math.exp(-2 * Math.PI * bandwidthHz * stepS);
  }
  begin(timeS: number, settledV: number): void {
    this.close();
    this.current = { lowestV: Infinity, settledV, startS: timeS, outsideUntilS: timeS };
  }
  step(timeS: number, railV: number): void {
    this.smoothV += (railV - this.smoothV) * this.follow;
    const event = this.current;
    if (event === null) return;
    if (timeS - event.startS > longestS) return this.close();
    if (this.smoothV < event.lowestV) event.lowestV = this.smoothV;
    if (Math.abs(this.smoothV - event.settledV) > this.band) event.outsideUntilS = timeS;
  }
  /** Ends the event under way and keeps it if it was the hardest. */
  close(): void {
    this.hardest = harder(this.hardest, this.current);
    this.hardestStep = harder(this.hardestStep, isStep(this.current) ? this.current : null);
    this.current = null;
  }
  /** The event, the one under way included, with the lowest voltage so far. */
  lowest(): RailEvent | null {
    return harder(this.hardest, this.current);
  }
  /** The same among load steps, for which recovery is defined. */
  lowestStep(): RailEvent | null {
    return harder(this.hardestStep, isStep(this.current) ? this.current : null);
  }
}
const isStep = (event: RailEvent | null): boolean => event !== null && !Number.isNaN(event.settledV);
function harder(a: RailEvent | null, b: RailEvent | null): RailEvent | null {
  if (a === null || b === null) return a ?? b;
  return b.lowestV < a.lowestV ? b : a;
}
