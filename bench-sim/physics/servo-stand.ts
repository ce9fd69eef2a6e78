// SPDX-License-Identifier: MIT
// A servo with its linkage on its own receiver rail behind a stiff bus, and nothing else of the car: the same models on
// the same grid of 8 us steps as the whole plant, several times as fast; the rail is a source with its resistance but
// for the work on the tyres, where its regulator is solved. For studies of many servos.
import { linkageTruth, scrubTruth } from './linkage-truth.ts';
import { TwoBodyHeat } from './heat.ts';
import { cellOpenV } from './pack.ts';
import type { CarParameters } from './parameters.ts';
import { RailEvents } from './rail-events.ts';
import { RailRegulator } from './rail-regulator.ts';
import { ScrubWatch } from './scrub-watch.ts';
import { ServoRest } from './servo-rest.ts';
import { ServoSweep } from './servo-sweep.ts';
import { servoTruth } from './servo-truth.ts';
import { Servo } from './servo.ts';
import { railSourceOhm, railV, stallA } from './steady-state.ts';

const stepS = 8e-6;
const stepsPerTick = 125;
const tickS = stepS * stepsPerTick;
const jumpS = 20e-6;

export class ServoStand {
  readonly servo: Servo;
  readonly rest = new ServoRest();
  readonly sweep = new ServoSweep();
  readonly scrub = new ScrubWatch();
  readonly events: RailEvents;
  readonly warmth: { readonly servo: TwoBodyHeat };
  private readonly rail: RailRegulator;
  private readonly busV: number;
  private readonly restV: number;
  private readonly sourceOhm: number;
  private pulseS: number | null = null;
  private ticks = 0;

  constructor(readonly car: CarParameters) {
    const { servo, rail, pack, ambientC } = car;
    this.servo = new Servo(servo, stepS);
    this.rail = new RailRegulator(rail, stepS);
    this.events = new RailEvents(rail.settingV, stepS);
    this.busV = cellOpenV(pack.charge[0]) + cellOpenV(pack.charge[1]);
    this.restV = railV(car, 0);
    this.sourceOhm = railSourceOhm(car);
    const body = {
      innerJPerK: servo.windingJPerK,
      betweenKPerW: servo.windingToCaseKPerW,
      outerJPerK: servo.caseJPerK,
      toAirKPerW: servo.caseToAirKPerW,
    };
    this.warmth = { servo: new TwoBodyHeat(body, ambientC) };
  }
  /** Gives the servo this pulse for so many milliseconds. */
  hold(pulseS: number, ms: number): void {
    const jumped = this.pulseS !== null && Math.abs(pulseS - this.pulseS) > jumpS;
    if (jumped && this.rail.receiverV > 0.9 * this.car.rail.settingV)
      this.events.begin(this.timeS, Number.NaN);
    this.pulseS = pulseS;
    for (let k = 0; k < ms; k++) this.tick(pulseS);
  }
  /** What checks would find, by result id, as the whole plant says it. */
  truth(): Record<string, number> {
    return {
      ...servoTruth(this),
      ...linkageTruth(this),
      ...scrubTruth(this),
      'stall-current': stallA(this.car.servo, this.warmth.servo.innerC),
      'source-resistance': railSourceOhm(this.car),
      'rail-setting': railV(this.car, 0),
    };
  }
  private get timeS(): number {
    return this.ticks * tickS;
  }
  private tick(pulseS: number): void {
    const { servo, rail, warmth, car } = this;
    rail.tick(true, tickS);
    const { onTyres } = servo.linkage;
    for (let k = 0; k < stepsPerTick; k++) {
      const slotV = onTyres ? rail.receiverV : this.restV - this.sourceOhm * servo.plugA;
      servo.step(slotV - car.railShuntOhm * servo.plugA, pulseS, warmth.servo.innerC);
      if (onTyres) this.work(k);
    }
    this.ticks++;
    warmth.servo.step(servo.copperJ, servo.otherJ, car.ambientC, tickS);
    servo.copperJ = servo.otherJ = 0;
    servo.setTemperature(warmth.servo.innerC);
    this.watch(pulseS);
  }
  /** The regulator's own course matters only where the servo works hard. */
  private work(step: number): void {
    const { servo, rail, scrub, events } = this;
    scrub.step(servo.plugA);
    rail.step(this.busV, 0, servo.plugA);
    events.step(this.timeS + step * stepS, rail.receiverV);
  }
  private watch(pulseS: number): void {
    const { servo, scrub, rest, sweep } = this;
    if (servo.linkage.onTyres) scrub.tick(servo.chargeC, pulseS, tickS);
    rest.tick(servo, pulseS, tickS);
    sweep.tick(servo, pulseS, tickS);
  }
}
