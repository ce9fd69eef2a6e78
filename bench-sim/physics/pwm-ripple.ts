// SPDX-License-Identifier: MIT
// What the controller's PWM leaves on the taps: the fundamental of the pulsed bus current, 2 I/pi |sin pi D|,
// divided between capacitor and source, at its true frequency and phase. The plant itself is averaged over a
// PWM period; only what the taps see carries this ripple. Higher harmonics are left out.
import type { CarParameters } from './parameters.ts';

/** What of the pulsed current's fundamental the capacitor leaves to the leads and the pack: |Zc|/|Zc + Zs|. */
export function shareOfPack({ line, pack, controller }: CarParameters): number {
  const perS = 2 * Math.PI * controller.pwmHz;
  const capacitive = -1 / (perS * line.capacitanceF);
  const loopOhm = pack.seriesOhm + line.leadOhm + line.feedOhm + line.postOhm + line.esrOhm;
  const reactive = perS * line.inductanceH + capacitive;
  return Math.hypot(line.esrOhm, capacitive) / Math.hypot(loopOhm, reactive);
}
export class PwmRipple {
  packA = 0;
  packV = 0;
  controllerV = 0;
  private amplitudeA = 0;
  private real = 1;
  private imaginary = 0;
  private readonly turnReal: number;
  private readonly turnImaginary: number;
  private readonly share: number;
  private readonly lift: number;
  private readonly packOhm: number;
  private readonly upstreamOhm: number;
  private readonly reactanceOhm: number;

  constructor(car: CarParameters, stepS: number) {
    const { line, pack, controller } = car;
    const perS = 2 * Math.PI * controller.pwmHz;
    this.turnReal = Math.cos(perS * stepS);
    this.turnImaginary = Math.sin(perS * stepS);
    this.packOhm = pack.seriesOhm + line.leadOhm;
    this.upstreamOhm = this.packOhm + line.feedOhm;
    this.reactanceOhm = perS * line.inductanceH;
    this.share = shareOfPack(car);
    // The taps' filters hold each step and join steps by straight lines: together sin(x)/x of a sine, given back here.
    const x = Math.PI * controller.pwmHz * stepS;
    this.lift = x / Math.sin(x);
  }
  tick(duty: number, motorA: number): void {
    const fundamentalA = ((2 * motorA) / Math.PI) * Math.sin(Math.PI * duty);
    this.amplitudeA = fundamentalA > 1e-6 ? fundamentalA * this.share * this.lift : 0;
    const length = Math.hypot(this.real, this.imaginary);
    this.real /= length;
    this.imaginary /= length;
  }
  step(): void {
    const { real, imaginary, turnReal, turnImaginary } = this;
    this.real = real * turnReal - imaginary * turnImaginary;
    this.imaginary = real * turnImaginary + imaginary * turnReal;
    this.packA = this.amplitudeA * this.real;
    this.packV = -this.packOhm * this.packA;
    this.controllerV = -this.upstreamOhm * this.packA + this.reactanceOhm * this.amplitudeA * this.imaginary;
  }
}
