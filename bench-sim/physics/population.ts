// SPDX-License-Identifier: MIT
// One car per seed: a healthy plant, the labels on its parts (ratings within a maker's tolerance of the
// healthy truth), then the faults asked for. Each part draws from a stream of its own.
import type { Car } from '#core/parts/part';
import { severityOf, type Faults } from '../faults/faults.ts';
import { seededRandom, type SeededRandom } from '../seeded-random.ts';
import type { Plant } from '../wiring/plant.ts';
import { drawRadio } from './control-draw.ts';
import { makeKind, spoil } from './fault-effects.ts';
import { drawJoints, drawProbe } from './joint-draw.ts';
import { drawDrive } from './drive-draw.ts';
import { drawMotor } from './motor-draw.ts';
import type { CarParameters, SensorParameters } from './parameters.ts';
import { labelCar } from './part-label.ts';
import { drawServo } from './servo-draw.ts';
import { kvRpmPerV, noLoad, railSourceOhm, stallA } from './steady-state.ts';
import { drawController, drawLine, drawPack, drawRail } from './supply-draw.ts';
import { CarPlant } from './whole-plant.ts';

export interface DrawnCar {
  readonly plant: Plant;
  /** What the person knows: names, ratings, settings. */
  readonly car: Car;
  /** What it truly is, in words. */
  readonly description: string;
}

/** The healthy car of a seed. */
export function drawParameters(seed: number): CarParameters {
  const random = seededRandom(seed, 'car');
  const settingV = random.unit() < 0.6 ? 6 : 7.4;
  const controller = drawController(random.stream('controller'));
  return {
    ambientC: random.between(18, 28),
    pack: drawPack(random.stream('pack'), settingV),
    line: drawLine(random.stream('line')),
    controller,
    rail: drawRail(random.stream('rail'), settingV),
    motor: drawMotor(random.stream('motor'), controller.driverOhm),
    servo: drawServo(random.stream('servo'), settingV),
    radio: drawRadio(random.stream('radio'), controller),
    joints: drawJoints(random.stream('joints')),
    probe: drawProbe(random.stream('probe')),
    sensor: drawSensor(random),
    drive: drawDrive(random.stream('drive')),
    bankOhm: bank(random.stream('bank')),
    railShuntOhm: 0.01,
  };
}
const drawSensor = (random: SeededRandom): SensorParameters => ({
  lagS: random.between(10, 14),
  gain: random.between(0.9, 0.94),
  open: false,
  motorShorted: false,
  motorLooseHz: 0,
});
function bank(random: SeededRandom): [number, number, number] {
  const near = (ohm: number) => ohm * random.between(0.97, 1.03);
  return [near(10), near(4.7), near(2.2)];
}
/** Faults of what a person entered, not of the part. */
function mislabelled(car: Car, faults: Faults): Car {
  if (severityOf(faults, 'wrong-pole-pairs') <= 0.5) return car;
  return { ...car, motor: { ...car.motor, polePairs: car.motor.polePairs === 1 ? 2 : 1 } };
}
export function drawCar(seed: number, faults: Faults = {}): DrawnCar {
  const parameters = drawParameters(seed);
  makeKind(parameters, faults);
  const car = mislabelled(labelCar(seed, parameters), faults);
  spoil(parameters, faults);
  return { plant: new CarPlant(parameters), car, description: describe(parameters) };
}
function describe(car: CarParameters): string {
  const { motor, servo, rail, pack } = car;
  const spinning = noLoad(car);
  return [
    `${motor.turns}T motor, ${Math.round(kvRpmPerV(motor))} rpm/V, ${spinning.currentA.toFixed(2)} A without load`,
    `${servo.digital ? 'digital' : 'analog'} servo, ${stallA(servo, 25).toFixed(2)} A stalled at ${servo.ratedV} V`,
    `rail ${rail.settingV.toFixed(2)} V through ${(railSourceOhm(car) * 1e3).toFixed(0)} mohm, limit ${rail.limitA.toFixed(1)} A`,
    `pack ${pack.capacityAh.toFixed(1)} Ah, ${(pack.seriesOhm * 1e3).toFixed(1)} mohm, air ${car.ambientC.toFixed(1)} C`,
  ].join('; ');
}
