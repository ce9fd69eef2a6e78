// SPDX-License-Identifier: MIT
// Radio and receiver: the pulses on the receiver's two outputs while a driver holds wheel and trigger, what becomes of
// them when the transmitter is off, and how the link comes back. It knows no servo, no controller and no rig.
import { seededRandom, type SeededRandom } from '../seeded-random.ts';
import type { HallEdge } from '../wiring/plant.ts';
import type { RadioParameters } from './parameters.ts';

/** Below this a receiver is off; from memory. */
const awakeV = 3.3;
/** Lines of receiver channels 1 and 2 in HallEdge. */
const firstLine = 3;

/** Seconds of pulse width for a position from -1 over 0 to 1. */
export const widthAt = (at: number, [low, middle, high]: readonly [number, number, number]): number =>
  middle + (at < 0 ? (middle - low) * at : (high - middle) * at);

export class Radio {
  /** -1 fully left, 1 fully right. */
  wheel = 0;
  /** -1 full brake, 1 full throttle. */
  trigger = 0;
  /** How far the trigger was pulled at most when the transmitter went off. */
  heldTrigger = 0;
  private transmits = true;
  private readonly random: SeededRandom;
  private nextFrameS = Number.NaN;
  private lostAtS = Number.NEGATIVE_INFINITY;
  private backAtS = Number.NEGATIVE_INFINITY;
  private lastTriggerBefore = 0;
  private lastWheelBefore = 0;
  private nowS = 0;

  constructor(private readonly p: RadioParameters) {
    this.random = seededRandom(p.noiseSeed, 'radio');
  }
  turn(on: boolean): void {
    if (on === this.transmits) return;
    this.transmits = on;
    if (on) {
      this.backAtS = this.nowS + this.p.linkS;
      return;
    }
    this.lostAtS = this.nowS;
    this.lastTriggerBefore = this.trigger;
    this.heldTrigger = Math.max(this.heldTrigger, this.trigger);
    this.lastWheelBefore = this.wheel;
  }
  /** Edges of every frame that begins in the next `tickS`. */
  tick(receiverV: number, timeS: number, tickS: number, onEdge: (edge: HallEdge) => void): void {
    this.nowS = timeS;
    if (receiverV < awakeV) {
      this.nextFrameS = Number.NaN;
      return;
    }
    if (Number.isNaN(this.nextFrameS)) this.nextFrameS = timeS + this.p.startS;
    for (; this.nextFrameS < timeS + tickS; this.nextFrameS += this.p.frameS) this.frame(onEdge);
  }
  private frame(onEdge: (edge: HallEdge) => void): void {
    const [wheel, trigger] = this.positions();
    const steeringS = widthAt(wheel, this.p.steeringS);
    const throttleS = widthAt(trigger, this.p.throttleS);
    const [first, second] = this.p.crossed ? [throttleS, steeringS] : [steeringS, throttleS];
    const secondAtS = this.pulse(firstLine, this.nextFrameS, first, onEdge);
    this.pulse(firstLine + 1, secondAtS, second, onEdge);
  }
  /** Returns when the pulse ends: the next channel's begins there. */
  private pulse(line: number, atS: number, widthS: number, onEdge: (edge: HallEdge) => void): number {
    const endS = atS + widthS + this.p.jitterS * this.random.gaussian();
    onEdge({ timeS: atS, line: line as 3 | 4, level: true });
    onEdge({ timeS: endS, line: line as 3 | 4, level: false });
    return endS;
  }
  /** What the receiver believes of wheel and trigger. */
  private positions(): readonly [wheel: number, trigger: number] {
    const { p, nowS } = this;
    const held = [this.lastWheelBefore, this.lastTriggerBefore] as const;
    if (this.transmits && nowS >= this.backAtS + p.staleS) return [this.wheel, this.trigger];
    if (this.transmits && nowS >= this.backAtS) return held;
    const safe = nowS >= this.lostAtS + p.failSafeS;
    return [this.lastWheelBefore, safe ? p.failSafeTrigger : this.lastTriggerBefore];
  }
}
