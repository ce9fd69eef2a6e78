// SPDX-License-Identifier: MIT
// A servo that is driven by itself, as the bench of the steering's checks: pulses change once a frame, the current is
// heard in blocks with the tap's noise, and the virtual person does what the words of a step ask. No processor, no
// link, no rail tap; a step of a millisecond stands for a scan.
import type { SteeringBench } from '#checks/servo-end-points/steering-bench';
import type { Car } from '#core/parts/part';
import type { ClockFit } from '#core/samples/sample-store';
import { wire } from '#protocol/generated-messages';
import { linkageHand } from '#sim/physics/linkage-person';
import type { ServoStand } from '#sim/physics/servo-stand';
import type { SeededRandom } from '#sim/seeded-random';
import type { RigErrors } from '#sim/wiring/rig-errors';

const tickS = 1e-3;
const frameTicks = 20;
const blockTicks = (wire.scanTicks * wire.scansPerBlock) / wire.ticksPerSecond / tickS;
/** 0.6 steps of 9.8 mA, mean of two conversions, and the steps themselves. */
const noiseA = 0.005;
const restUs = 1500;

export class StandBench implements SteeringBench {
  readonly samples: SteeringBench['samples'] & { readonly clock: ClockFit };
  private readonly currentsA: number[] = [];
  private readonly firstFrame: number;
  private ramp = { fromUs: restUs, toUs: restUs, startS: 0, overS: 0 };
  private frameUs = restUs;

  constructor(
    readonly stand: ServoStand,
    readonly car: Car,
    { clock }: Pick<RigErrors, 'clock'>,
    private readonly chance: SeededRandom,
  ) {
    this.samples = {
      series: (_tap, fromS, toS) => this.heard(fromS, toS),
      clock: { ratio: 1 / (1 + clock), halfWidth: 0, origin: 'fit' },
    };
    this.firstFrame = Math.floor(chance.between(0, frameTicks));
  }
  /** As of the newest whole block. */
  now(): number {
    return Math.floor(this.currentsA.length / blockTicks) * blockTicks * tickS;
  }
  async wait(seconds: number): Promise<void> {
    await this.waitFor(() => false, seconds);
  }
  async waitFor(seen: () => boolean, timeoutS: number): Promise<boolean> {
    const untilS = this.now() + timeoutS;
    let found = seen();
    while (!found && this.now() < untilS) {
      this.block();
      found = seen();
    }
    return found;
  }
  async steer(widthUs: number, rampS: number): Promise<void> {
    const startS = this.currentsA.length * tickS;
    this.ramp = { fromUs: this.commandedUs(startS), toUs: widthUs, startS, overS: rampS };
    await this.wait(rampS);
  }
  /** Nothing here would refuse a width. */
  async steeringRange(): Promise<void> {}
  async ask(words: string): Promise<void> {
    linkageHand(this.stand, words);
  }
  async askNumber(words: string): Promise<number> {
    const figure = linkageHand(this.stand, words);
    if (figure === undefined) throw new RangeError(`Nobody here can answer "${words}"`);
    return figure;
  }
  progress(): void {}

  private block(): void {
    const nextBlock = Math.floor(this.currentsA.length / blockTicks) + 1;
    while (this.currentsA.length < nextBlock * blockTicks) this.tick();
  }
  private tick(): void {
    const ticks = this.currentsA.length;
    if (ticks % frameTicks === this.firstFrame) this.frameUs = this.commandedUs(ticks * tickS);
    const { servo } = this.stand;
    const beforeC = servo.chargeC;
    this.stand.hold(this.frameUs * 1e-6 * this.samples.clock.ratio, 1);
    this.currentsA.push((servo.chargeC - beforeC) / tickS + noiseA * this.chance.gaussian());
  }
  private commandedUs(atS: number): number {
    const { fromUs, toUs, startS, overS } = this.ramp;
    const share = overS > 0 ? Math.min(1, (atS - startS) / overS) : 1;
    return fromUs + share * (toUs - fromUs);
  }
  private heard(fromS: number, toS: number) {
    const first = Math.max(0, Math.ceil(fromS / tickS));
    const value = Float64Array.from(this.currentsA.slice(first, Math.ceil(toS / tickS)));
    return { timeS: value.map((_, k) => (first + k + 0.5) * tickS), value, clipped: 0, lost: 0 };
  }
}
