// SPDX-License-Identifier: MIT
// One walk outward, a step a frame. A servo that walks freely draws about the same all the while, by fits and starts;
// one that is kept from its place draws more with every frame. The current is watched at every block, so that the
// walk ends as soon as its mean over the last two stands out.
import type { Servo } from '#core/parts/part';
import type { Stretch } from '../stretch.ts';
import { freeLevel, meanA } from './bind-watch.ts';
import type { KeptStep } from './evidence.ts';
import type { SteeringBench } from './steering-bench.ts';

const frameS = 0.02;
/** Two blocks: what a servo that moves freely draws by fits and starts is even over them. */
const heardS = 0.015;
/** From the command until the servo drives to it: half a frame, half a loop, what its winding takes (from memory). */
const lagS = { digital: 0.0135, other: 0.022 } as const;
const lagOf = ({ digital }: Servo): number => lagS[digital ? 'digital' : 'other'];
/** Levels needed before one can stand out. */
const fewestLevels = 16;
/** Levels further back count no more: a servo may be restless at its worn centre alone. */
const freshLevels = 24;
/** A level is whole once two more steps were sent. */
const wholeAfter = 2;
const shortestS = 0.006;

export class Walk {
  private readonly sent: { widthUs: number; atS: number }[] = [];
  private readonly levelsA: number[] = [];
  private readonly lagS: number;
  private endS = 0;

  constructor(
    private readonly bench: SteeringBench,
    private readonly leastRiseA: number,
  ) {
    this.lagS = lagOf(bench.car.servo);
  }
  /** Stays there for a frame; true, and at once, when the current stands out. */
  async stepTo(widthUs: number): Promise<boolean> {
    const { bench, sent, levelsA } = this;
    await bench.steer(widthUs, 0);
    sent.push({ widthUs, atS: bench.now() });
    const boundA =
      levelsA.length < fewestLevels
        ? Infinity
        : freeLevel(levelsA.slice(-freshLevels), this.leastRiseA).boundA;
    const pressed = () => meanA(bench.samples, { fromS: bench.now() - heardS, toS: bench.now() }) > boundA;
    const met = await bench.waitFor(pressed, frameS);
    this.endS = bench.now();
    if (sent.length > wholeAfter)
      levelsA.push(meanA(bench.samples, this.stretchOf(sent.length - 1 - wholeAfter)));
    return met;
  }
  /** Each with the stretch in which the servo drove to it, none after the walk's end. */
  steps(): KeptStep[] {
    return this.sent
      .map(({ widthUs }, k) => ({ widthUs, stretch: this.stretchOf(k) }))
      .filter(({ stretch: { fromS, toS } }) => toS - fromS >= shortestS);
  }
  private stretchOf(k: number): Stretch {
    const nextS = this.sent[k + 1]?.atS ?? Infinity;
    return { fromS: this.sent[k].atS + this.lagS, toS: Math.min(nextS + this.lagS, this.endS) };
  }
}
