// SPDX-License-Identifier: MIT
// How far the search may go: the session's usual limits, widened by 100 us at a time where no stop was met inside
// them, never beyond what a car's steering has or the rig sends. From memory.
import type { SteeringBench } from './steering-bench.ts';

const usual = { lowUs: 1100, highUs: 1900 };
const byUs = 100;
/** No car's steering needs more than this at the horn; the servo's own stops lie beyond. */
const mostDegrees = 55;
const rig = { lowUs: 800, highUs: 2200 };
const restUs = 1500;

export class SteeringRange {
  private lowUs = usual.lowUs;
  private highUs = usual.highUs;
  private readonly mostUs: number;

  constructor(private readonly bench: SteeringBench) {
    this.mostUs = mostDegrees / bench.car.servo.degreesPerUs;
  }
  has(widthUs: number): boolean {
    return widthUs >= this.lowUs && widthUs <= this.highUs;
  }
  /** False when that width is out of bounds for good. The servo comes to rest first. */
  async widenTo(widthUs: number): Promise<boolean> {
    if (Math.abs(widthUs - restUs) > this.mostUs || widthUs < rig.lowUs || widthUs > rig.highUs) return false;
    if (widthUs < this.lowUs) this.lowUs = Math.max(rig.lowUs, this.lowUs - byUs);
    else this.highUs = Math.min(rig.highUs, this.highUs + byUs);
    await this.bench.steer(restUs, 0.3);
    await this.bench.wait(0.02);
    await this.bench.steeringRange(this.lowUs, this.highUs);
    return true;
  }
}
