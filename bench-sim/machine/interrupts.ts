// SPDX-License-Identifier: MIT
// The interrupt lines of the chip: which are wanted, since when, and what entering one clears.
// It does not know why a part wants its line; parts keep their own flags.
import { VECTOR_COUNT } from './registers.ts';

export class Interrupts {
  /** One bit a vector; a set bit is a flag that is set and enabled. */
  pending = 0;
  /** Cycle at which each line was last raised. */
  readonly since = new Float64Array(VECTOR_COUNT);
  private readonly acknowledges: (() => void)[] = Array.from({ length: VECTOR_COUNT }, () => () => undefined);

  /** What entering the vector does in its part (most clear their flag). */
  onEntry(vector: number, acknowledge: () => void): void {
    this.acknowledges[vector] = acknowledge;
  }

  want(vector: number, wanted: boolean, cycle: number): void {
    const bit = 1 << vector;
    if (!wanted) {
      this.pending &= ~bit;
    } else if ((this.pending & bit) === 0) {
      this.pending |= bit;
      this.since[vector] = cycle;
    }
  }

  /** Lowest vector wanted; call only while `pending` is not 0. */
  first(): number {
    return 31 - Math.clz32(this.pending & -this.pending);
  }

  enter(vector: number): void {
    this.acknowledges[vector]();
  }

  reset(): void {
    this.pending = 0;
  }
}
