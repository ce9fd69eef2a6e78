// SPDX-License-Identifier: MIT
// Keeps drives alive: a drive ends by itself within a second, so the wanted width of each output is sent again
// every 300 ms until somebody wants another one. It knows widths, not what they do.
import { outputCode, wire } from '#protocol/codes';
import type { Clock } from './clock.ts';
import type { CommandQueue } from './command-queue.ts';

export type DrivenOutput = keyof typeof outputCode;
export const renewMs = 300;
const usPerTick = 0.5;
export const ticksOf = (widthUs: number): number => Math.round(widthUs / usPerTick);

interface Wanted {
  readonly widthUs: number;
  readonly rampMs: number;
  /** Renewals at rest would hinder what the rig allows at rest only. */
  readonly renew: boolean;
}
export class DriveKeeper {
  /** Renewals that failed; the drive then ends by itself and the rig tells it. */
  failedRenewals = 0;
  private readonly wanted = new Map<DrivenOutput, Wanted>();
  private cancel: (() => void) | null = null;

  constructor(
    private readonly queue: CommandQueue,
    private readonly clock: Clock,
  ) {}
  /** Resolves when the rig has taken it. Rejects with RefusedError or RigError; then nothing is renewed. */
  async drive(output: DrivenOutput, widthUs: number, rampS: number, renew = true): Promise<void> {
    this.wanted.delete(output);
    const wanted = { widthUs, rampMs: Math.round(rampS * 1000), renew };
    await this.send(output, wanted);
    if (renew) this.wanted.set(output, wanted);
    this.cancel ??= this.clock.every(renewMs, () => this.renew());
  }
  /** True when a drive of this output should not have ended by itself. */
  holds(output: DrivenOutput): boolean {
    return this.wanted.has(output);
  }
  release(output: DrivenOutput): void {
    this.wanted.delete(output);
  }
  /** Once more, then no longer: something else will set this output within the drive's second. */
  async handOver(output: DrivenOutput): Promise<void> {
    const wanted = this.wanted.get(output);
    this.wanted.delete(output);
    if (wanted) await this.send(output, wanted);
  }
  clear(): void {
    this.wanted.clear();
    this.cancel?.();
    this.cancel = null;
  }
  private renew(): void {
    for (const [output, wanted] of this.wanted)
      this.send(output, wanted).catch(() => {
        this.failedRenewals++;
      });
  }
  private async send(output: DrivenOutput, { widthUs, rampMs }: Wanted): Promise<void> {
    const code = outputCode[output];
    const width = ticksOf(widthUs);
    await this.queue.ask({ type: 'drive', output: code, width, rampMs, holdMs: wire.driveMaxMs });
  }
}
