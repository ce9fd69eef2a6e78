// SPDX-License-Identifier: MIT
// The speed controller's mind: power switch, wake, arming on neutral, duty and brake from the pulse through
// dead band and slew, cut-off, signal loss, current limit. It knows no motor, only the current it is told.
import type { SpeedControllerParameters } from './parameters.ts';

export type ControllerState = 'off' | 'waking' | 'waiting' | 'armed' | 'silent' | 'cut off' | 'programming';

const wakeV = 4.5;
const sleepV = 3.8;
/** The pulse counts as absent 50 ms after its last one, see PlantInputs. */
const absentAfterS = 0.05;

export class SpeedController {
  switchedOn = true;
  state: ControllerState = 'off';
  duty = 0;
  brake = 0;
  private wantedDuty = 0;
  private wantedBrake = 0;
  private dutyCap = 1;
  private inStateS = 0;
  private neutralS = 0;
  private forwardS = 0;
  private silentS = 0;
  private lowBusS = 0;
  private readonly p: SpeedControllerParameters;
  private readonly slewPerStep: number;

  constructor(p: SpeedControllerParameters, stepS: number) {
    this.p = p;
    this.slewPerStep = stepS / p.slewS;
  }
  get awake(): boolean {
    return this.state !== 'off' && this.state !== 'waking';
  }
  drawA(busV: number): number {
    return this.awake ? this.p.idleA * Math.min(1, busV / 3) : 0;
  }
  step(): void {
    const wanted = this.wantedDuty < this.dutyCap ? this.wantedDuty : this.dutyCap;
    const change = wanted - this.duty;
    const slew = this.slewPerStep;
    this.duty += change > slew ? slew : change < -slew ? -slew : change;
    this.brake = this.duty > 0 ? 0 : this.wantedBrake;
  }
  tick(busV: number, pulseS: number | null, motorA: number, tickS: number): void {
    this.count(busV, pulseS, tickS);
    const next = this.nextState(busV);
    if (next !== this.state) this.enter(next);
    this.inStateS += tickS;
    this.command(pulseS);
    const over = motorA > this.p.currentLimitA;
    this.dutyCap = over ? Math.max(0.02, this.duty - 20 * tickS) : Math.min(1, this.dutyCap + 2 * tickS);
  }
  /** Position of the trigger: -1 full brake, 0 neutral, 1 full throttle. */
  travel(pulseS: number): number {
    const { neutralS, highS, lowS, deadBand, fullAt } = this.p;
    const x = (pulseS - neutralS) / (pulseS > neutralS ? highS - neutralS : neutralS - lowS);
    const beyond = (Math.abs(x) - deadBand) / (fullAt - deadBand);
    return Math.sign(x) * Math.min(1, Math.max(0, beyond));
  }
  private count(busV: number, pulseS: number | null, tickS: number): void {
    const travel = pulseS === null ? Number.NaN : this.travel(pulseS);
    this.neutralS = travel === 0 ? this.neutralS + tickS : 0;
    this.forwardS = travel > 0.6 ? this.forwardS + tickS : 0;
    this.silentS = pulseS === null ? this.silentS + tickS : 0;
    this.lowBusS = busV < this.p.cutOffV ? this.lowBusS + tickS : 0;
  }
  private nextState(busV: number): ControllerState {
    if (!this.switchedOn || busV < (this.state === 'off' ? wakeV : sleepV)) return 'off';
    switch (this.state) {
      case 'off':
        return 'waking';
      case 'waking':
        return this.inStateS >= this.p.wakeS ? 'waiting' : 'waking';
      case 'waiting':
        if (this.forwardS > 1) return 'programming';
        return this.neutralS >= this.p.armS ? 'armed' : 'waiting';
      case 'armed':
        if (this.silentS > this.p.signalLossS - absentAfterS) return 'silent';
        return this.lowBusS > 0.2 && this.duty > 0 ? 'cut off' : 'armed';
      case 'silent':
      case 'cut off':
        return this.neutralS > 0.1 ? 'armed' : this.state;
      case 'programming':
        return 'programming';
    }
  }
  private enter(state: ControllerState): void {
    this.state = state;
    this.inStateS = 0;
    if (state === 'waiting') this.neutralS = 0;
  }
  private command(pulseS: number | null): void {
    const drives = this.state === 'armed';
    const travel = drives && pulseS !== null ? this.travel(pulseS) : Number.NaN;
    if (travel > 0 || !drives) this.wantedBrake = 0;
    else if (travel === 0) this.wantedBrake = this.p.dragBrake;
    else if (travel < 0) this.wantedBrake = -travel * this.p.fullBrake;
    if (!drives) this.wantedDuty = 0;
    else if (pulseS !== null) this.wantedDuty = Math.max(0, travel);
    if (!this.awake) this.duty = 0;
  }
}
