// SPDX-License-Identifier: MIT
// The car on the bench: joins pack, supply line, controller, rail, motor, servo and heat on one fixed grid of
// 8 us steps, so that the same car and inputs give the same figures however it is called. Couplings between
// parts are one step late, which is short against every pole they join. It knows no pin and no count.
import { type HallEdge, type Plant, type PlantOutputs, restingInputs } from '../wiring/plant.ts';
import { personDoes } from './bench-person.ts';
import { DriveMotor } from './drive-motor.ts';
import { DriveTrain } from './drive-train.ts';
import { FourWire } from './four-wire.ts';
import { HallLines } from './hall-lines.ts';
import { LoadBank } from './load-bank.ts';
import { Pack } from './pack.ts';
import type { CarParameters } from './parameters.ts';
import { PwmRipple } from './pwm-ripple.ts';
import { Radio } from './radio.ts';
import { RailEvents } from './rail-events.ts';
import { RailRegulator } from './rail-regulator.ts';
import { RotorHand } from './rotor-hand.ts';
import { SensorCable } from './sensor-cable.ts';
import { ScrubWatch } from './scrub-watch.ts';
import { Servo } from './servo.ts';
import { ServoRest } from './servo-rest.ts';
import { ServoSweep } from './servo-sweep.ts';
import { SpeedController } from './speed-controller.ts';
import { railV } from './steady-state.ts';
import { SupplyLine } from './supply-line.ts';
import { truthOf } from './truth.ts';
import { Warmth } from './warmth.ts';

export const stepS = 8e-6;
/** Slow things (heat, open-circuit voltage, the controller's mind) move once in this many steps. */
const stepsPerTick = 125;
const tickS = stepS * stepsPerTick;
/** A steering pulse that moves by more than this is a servo event of the rail. */
const moveS = 20e-6;

interface MutableOutputs extends PlantOutputs {
  thermistorC: (number | null)[];
}

export class CarPlant implements Plant {
  readonly inputs = restingInputs();
  readonly car: CarParameters;
  readonly pack: Pack;
  readonly line: SupplyLine;
  readonly controller: SpeedController;
  readonly rail: RailRegulator;
  readonly motor: DriveMotor;
  readonly train: DriveTrain;
  readonly hall: HallLines;
  readonly hand: RotorHand;
  readonly cable: SensorCable;
  readonly servo: Servo;
  readonly rest = new ServoRest();
  readonly sweep = new ServoSweep();
  readonly scrub = new ScrubWatch();
  readonly radio: Radio;
  readonly probe: FourWire;
  readonly bank: LoadBank;
  readonly warmth: Warmth;
  readonly events: RailEvents;
  private readonly ripple: PwmRipple;
  private readonly seen: MutableOutputs;
  private stepsDone = 0;
  private untilTick = 1;
  private lastMask = 0;
  private lastPulseS: number | null = null;
  private railShuntA = 0;
  /** The person has plugged the pack straight into the controller: the rig's pack adapter lies beside. */
  packStraight = false;
  /** The servo's lead is where it belongs. */
  servoPlugged = true;
  private readonly packSign: 1 | -1;
  private readonly rings: boolean;

  constructor(car: CarParameters) {
    this.car = car;
    this.packSign = car.pack.reversed ? -1 : 1;
    this.rings = car.rail.ringV > 0;
    this.pack = new Pack(car.pack, stepS);
    this.line = new SupplyLine(car.line, car.pack.seriesOhm, stepS);
    this.controller = new SpeedController(car.controller, stepS);
    this.rail = new RailRegulator(car.rail, stepS);
    this.motor = new DriveMotor(car.motor, car.controller.driverOhm, stepS, car.controller.pwmHz);
    this.train = new DriveTrain(car.drive);
    this.hall = new HallLines(car.motor);
    this.hand = new RotorHand(car.motor);
    this.cable = new SensorCable(car);
    this.servo = new Servo(car.servo, stepS);
    this.radio = new Radio(car.radio);
    this.probe = new FourWire(car);
    this.bank = new LoadBank(car.bankOhm, car.railShuntOhm);
    this.warmth = new Warmth(car);
    this.events = new RailEvents(car.rail.settingV, stepS);
    this.ripple = new PwmRipple(car, stepS);
    this.seen = {
      packV: this.packSign * this.pack.openV,
      controllerV: car.line.startV,
      packA: 0,
      railV: 0,
      railA: 0,
      midCellV: this.pack.midV(0),
      probeV: 0,
      probeWide: false,
      thermistorC: this.warmth.thermistorC,
      hall: this.hall.levels,
    };
  }
  outputs(): PlantOutputs {
    return this.seen;
  }
  /** Seconds reached: the first grid point at or after the time last asked for. */
  get timeS(): number {
    return this.stepsDone * stepS;
  }
  advance(
    timeS: number,
    onStep: (outputs: PlantOutputs, dtS: number) => void,
    onEdge: (edge: HallEdge) => void,
  ): void {
    this.watchInputs();
    const target = timeS - stepS * 1e-6;
    while (this.timeS < target) {
      if (--this.untilTick === 0) this.tick(onEdge);
      this.step(onEdge);
      onStep(this.seen, stepS);
    }
  }
  person(act: string): number | undefined {
    return personDoes(this, act);
  }
  setProbeJumper(wide: boolean): void {
    this.seen.probeWide = wide;
  }
  truth(): Readonly<Record<string, number>> {
    return truthOf(this);
  }
  private step(onEdge: (edge: HallEdge) => void): void {
    const { inputs, line, pack, motor, rail, servo, bank, controller } = this;
    const startS = this.stepsDone * stepS;
    const mask = inputs.loadMask & 7;
    const plugV = this.servoPlugged ? bank.plugV(rail.receiverV, this.railShuntA) : 0;
    servo.step(plugV, inputs.steeringPulseS, this.warmth.servo.innerC);
    if (servo.linkage.onTyres) this.scrub.step(servo.plugA);
    rail.step(line.busV, bank.conductanceS[mask], bank.seenA(mask, servo.plugA));
    this.railShuntA = bank.shuntA(mask, rail.receiverV, servo.plugA);
    controller.step();
    if (this.hand.way === 0) motor.step(controller.duty, controller.brake, line.busV);
    else this.hand.step(motor, stepS);
    if (motor.turnedRad !== 0) this.hall.advance(motor.turnedRad, startS, stepS, onEdge);
    if (this.train.coupled) this.drag();
    const drawA = motor.busA + rail.inputA(line.busV) + controller.drawA(line.busV);
    const feed = this.packStraight ? 'full' : inputs.feed;
    line.step(pack.sourceV, drawA, feed, inputs.packLoad, inputs.bleeder);
    pack.step(line.packA);
    this.stepsDone++;
    this.observe();
  }
  private drag(): void {
    const { motor, train, car } = this;
    motor.addedKgM2 = car.drive.inertiaKgM2;
    motor.loadNm = train.turned(motor.turnedRad / car.motor.polePairs);
  }
  private observe(): void {
    const { seen, line, rail, ripple } = this;
    ripple.step();
    seen.packV = this.packSign * (line.packV + ripple.packV);
    seen.controllerV = line.controllerV + ripple.controllerV;
    seen.packA = line.packA + ripple.packA;
    seen.probeV = this.probe.volts(line.loadA);
    seen.railV = this.rings ? rail.receiverV + this.ringNowV() : rail.receiverV;
    seen.railA = this.railShuntA;
    seen.midCellV = this.pack.midV(line.packA);
    if (this.packStraight) seen.packV = seen.controllerV = seen.packA = seen.midCellV = 0;
    this.events.step(this.stepsDone * stepS, rail.receiverV);
  }
  private ringNowV(): number {
    const { ringV, ringHz } = this.car.rail;
    return this.rail.on ? ringV * Math.sin(2 * Math.PI * ringHz * this.timeS) : 0;
  }
  private tick(onEdge: (edge: HallEdge) => void): void {
    this.untilTick = stepsPerTick;
    const { controller, line, motor } = this;
    controller.tick(line.busV, this.inputs.throttlePulseS, motor.currentA, tickS);
    this.rail.tick(controller.awake, tickS);
    this.radio.tick(this.rail.receiverV, this.timeS, tickS, onEdge);
    this.hall.supply(this.inputs.hallSupply || controller.awake, this.timeS, onEdge);
    this.ripple.tick(controller.duty, motor.currentA);
    this.pack.settle();
    this.probe.tick(this, tickS);
    if (this.servo.linkage.onTyres) this.scrub.tick(this.servo.chargeC, this.inputs.steeringPulseS, tickS);
    this.warmth.tick(this, tickS);
    this.rest.tick(this.servo, this.inputs.steeringPulseS, tickS);
    this.sweep.tick(this.servo, this.inputs.steeringPulseS, tickS);
    this.hand.tick(tickS);
    this.cable.tick(this.hall, this.timeS, tickS, onEdge);
    if (this.cable.thermistorLost) this.seen.thermistorC[0] = null;
  }
  /** A load step, or a servo move, begins an event of the rail; taking load or feed off ends it. */
  private watchInputs(): void {
    const { loadMask, steeringPulseS, feed } = this.inputs;
    if (feed !== 'full') this.events.close();
    // The rig's feed can only be on with its adapter back in the lead.
    if (feed !== 'off') this.packStraight = false;
    if (loadMask !== this.lastMask) this.loadChanged(loadMask);
    if (steeringPulseS !== this.lastPulseS) this.steeringChanged(steeringPulseS);
  }
  private loadChanged(loadMask: number): void {
    const more = this.bank.conductanceS[loadMask & 7] > this.bank.conductanceS[this.lastMask & 7];
    this.lastMask = loadMask;
    if (more) this.beginEvent(railV(this.car, this.bank.conductanceS[loadMask & 7]));
    else this.events.close();
  }
  private steeringChanged(pulseS: number | null): void {
    const before = this.lastPulseS;
    this.lastPulseS = pulseS;
    if (pulseS === null || before === null || Math.abs(pulseS - before) < moveS) return;
    if (this.lastMask === 0) this.beginEvent(Number.NaN);
  }
  private beginEvent(settledV: number): void {
    const up = this.inputs.feed === 'full' && this.rail.receiverV > 0.9 * this.car.rail.settingV;
    if (up) this.events.begin(this.timeS, settledV);
  }
}
