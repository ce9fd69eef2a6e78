// SPDX-License-Identifier: MIT
// The heat of the whole car and what the four thermistors show: takes the joules that motor and servo have
// gathered, moves the nodes, and hands back warm copper and weaker magnets.
import { copperFactor, fluxFactor } from './copper.ts';
import type { DriveMotor } from './drive-motor.ts';
import { OneBodyHeat, Thermistor, TwoBodyHeat } from './heat.ts';
import type { CarParameters } from './parameters.ts';
import type { Servo } from './servo.ts';

/** A thermistor hot without end has no resistance. */
const shortedC = Number.POSITIVE_INFINITY;

interface Heated {
  readonly motor: DriveMotor;
  readonly servo: Servo;
}

export class Warmth {
  readonly motor: TwoBodyHeat;
  readonly servo: TwoBodyHeat;
  readonly controller: OneBodyHeat;
  /** Motor, servo case, controller, ambient; null is an open thermistor. */
  readonly thermistorC: (number | null)[];
  private readonly sensors: readonly [Thermistor, Thermistor, Thermistor];
  private readonly car: CarParameters;

  constructor(car: CarParameters) {
    const { ambientC, motor, servo, controller, sensor } = car;
    this.car = car;
    this.motor = new TwoBodyHeat(
      {
        innerJPerK: motor.windingJPerK,
        betweenKPerW: motor.windingToCanKPerW,
        outerJPerK: motor.canJPerK,
        toAirKPerW: motor.canToAirKPerW,
      },
      ambientC + motor.startAboveAirK,
    );
    this.servo = new TwoBodyHeat(
      {
        innerJPerK: servo.windingJPerK,
        betweenKPerW: servo.windingToCaseKPerW,
        outerJPerK: servo.caseJPerK,
        toAirKPerW: servo.caseToAirKPerW,
      },
      ambientC,
    );
    this.controller = new OneBodyHeat(controller.heatCapacityJPerK, controller.toAirKPerW, ambientC);
    const fresh = () => new Thermistor(sensor.lagS, sensor.gain, ambientC);
    const canC = ambientC + sensor.gain * motor.startAboveAirK;
    this.sensors = [new Thermistor(sensor.lagS, sensor.gain, canC), fresh(), fresh()];
    this.thermistorC = [canC, ambientC, ambientC, ambientC];
    if (sensor.open) this.thermistorC[0] = this.thermistorC[1] = null;
    if (sensor.motorShorted) this.thermistorC[0] = shortedC;
  }
  tick({ motor, servo }: Heated, tickS: number): void {
    const { ambientC, motor: motorParameters, controller, sensor } = this.car;
    const driverJ = (motor.copperJ * controller.driverOhm) / motor.windingOhm;
    this.motor.step(motor.copperJ, motor.frictionJ, ambientC, tickS);
    this.servo.step(servo.copperJ, servo.otherJ, ambientC, tickS);
    this.controller.step(driverJ, ambientC, tickS);
    motor.copperJ = motor.frictionJ = servo.copperJ = servo.otherJ = 0;
    motor.windingOhm = motorParameters.windingOhm * copperFactor(this.motor.innerC);
    motor.fluxVs = motorParameters.fluxVs * fluxFactor(this.motor.outerC);
    servo.setTemperature(this.servo.innerC);
    this.sense(sensor.open, ambientC, tickS);
  }
  private sense(open: boolean, ambientC: number, tickS: number): void {
    this.sensors[0].step(this.motor.outerC, ambientC, tickS);
    this.sensors[1].step(this.servo.outerC, ambientC, tickS);
    this.sensors[2].step(this.controller.bodyC, ambientC, tickS);
    if (!open && !this.car.sensor.motorShorted) this.thermistorC[0] = this.sensors[0].celsius;
    if (!open) this.thermistorC[1] = this.sensors[1].celsius;
    this.thermistorC[2] = this.sensors[2].celsius;
  }
}
