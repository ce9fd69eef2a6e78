// SPDX-License-Identifier: MIT
// Watches a servo that is led slowly along its travel: what it draws, by where its pulse stands, each way. Kept for the
// last such sweep of either way. It measures nothing at a tap.

interface Watched {
  readonly chargeC: number;
}
export interface SweepSeen {
  readonly meanA: number;
  /** Mean current by 40 us of pulse, ends left out. */
  readonly placesA: readonly number[];
}
const lowS = 1.1e-3;
const placeS = 40e-6;
const places = 20;
/** More than this from tick to tick is a step; longer still than this is a stop. */
const stepS = 10e-6;
const stillS = 0.03;
const longS = 600e-6;

export class ServoSweep {
  private pulseS = Number.NaN;
  private startS = Number.NaN;
  private way = 0;
  private stillForS = 0;
  private chargeC = 0;
  private charges = new Float64Array(places);
  private times = new Float64Array(places);
  private readonly kept = new Map<number, { charges: Float64Array; times: Float64Array }>();

  /** Once a tick. */
  tick({ chargeC }: Watched, pulseS: number | null, tickS: number): void {
    const moved = (pulseS ?? Number.NaN) - this.pulseS;
    this.pulseS = pulseS ?? Number.NaN;
    this.stillForS = moved === 0 ? this.stillForS + tickS : 0;
    const goesOn = Math.abs(moved) < stepS && moved * this.way >= 0 && this.stillForS < stillS;
    if (goesOn && this.way !== 0) this.add(chargeC - this.chargeC, tickS);
    else if (!goesOn || moved !== 0) this.begin(moved);
    this.chargeC = chargeC;
  }
  /** Null before the first sweep. */
  seen(): SweepSeen | null {
    this.keep();
    const ways = [...this.kept.values()];
    if (ways.length === 0) return null;
    const sum = (values: readonly number[]) => values.reduce((total, v) => total + v, 0);
    const means = ways.map(({ charges, times }) => sum([...charges]) / sum([...times]));
    const placesA = Array.from({ length: places - 2 }, (_, k) =>
      sum(ways.map(({ charges, times }) => charges[k + 1] / times[k + 1])),
    );
    return { meanA: sum(means) / ways.length, placesA: placesA.map((a) => a / ways.length) };
  }
  private add(chargeC: number, tickS: number): void {
    const place = Math.min(places - 1, Math.max(0, Math.floor((this.pulseS - lowS) / placeS)));
    this.charges[place] += chargeC;
    this.times[place] += tickS;
  }
  private begin(moved: number): void {
    this.keep();
    this.way = Math.abs(moved) < stepS ? Math.sign(moved) : 0;
    this.startS = this.pulseS;
    this.stillForS = 0;
    this.charges = new Float64Array(places);
    this.times = new Float64Array(places);
  }
  private keep(): void {
    if (Math.abs(this.pulseS - this.startS) < longS || this.way === 0) return;
    this.kept.set(this.way, { charges: this.charges, times: this.times });
  }
}
