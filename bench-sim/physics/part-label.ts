// SPDX-License-Identifier: MIT
// The labels on a drawn car's parts: a maker's ratings lie near the healthy truth, not on it. Invented names
// of the club night "Quarry Lantern 90" and its truck "Marmot". It never sees a fault.
import type { Car, Controller, Drive, Leads, Motor, Pack, Servo } from '#core/parts/part';
import { seededRandom, type SeededRandom } from '../seeded-random.ts';
import type { CarParameters } from './parameters.ts';
import { secondsPer60 } from './servo-truth.ts';
import { kvRpmPerV, noLoad, stallPlugA } from './steady-state.ts';

const to = (value: number, step: number): number => Number((Math.round(value / step) * step).toFixed(6));

function labelMotor(random: SeededRandom, car: CarParameters): Motor {
  return {
    kind: 'motor',
    name: `Marmot ${car.motor.turns}T`,
    turns: car.motor.turns,
    polePairs: car.motor.polePairs,
    sensored: true,
    ratedKvRpmPerV: to(kvRpmPerV(car.motor) * random.between(0.975, 1.025), 10),
    ratedKvTolerance: 0.07,
    ratedSpeedRpm: 50000,
    ratedNoLoadA: to(noLoad(car).currentA * random.between(0.95, 1.06), 0.1),
  };
}
function labelServo(random: SeededRandom, car: CarParameters): Servo {
  const { servo } = car;
  return {
    kind: 'servo',
    name: servo.digital ? 'Marmot steering, digital' : 'Marmot steering, analog',
    digital: servo.digital,
    ratedVoltageV: servo.ratedV,
    ratedStallA: to(stallPlugA(servo, servo.ratedV, 25) * random.between(0.95, 1.05), 0.05),
    ratedStallTolerance: 0.2,
    degreesPerUs: to(((servo.radPerS * 180) / Math.PI / 1e6) * random.between(0.99, 1.01), 0.0005),
    ratedSecondsPer60: to(secondsPer60(car) * random.stream('speed').between(0.96, 1.04), 0.001),
    splineTeeth: servo.horn.splineTeeth,
  };
}
function labelController(random: SeededRandom, { controller, servo, line }: CarParameters): Controller {
  const toUs = (widthS: number) => Math.round(widthS * 1e6);
  return {
    kind: 'controller',
    name: 'Lantern 90 speed controller',
    railSettingV: servo.ratedV,
    railFloorV: to(random.between(4, 4.3), 0.1),
    throttle: {
      lowUs: toUs(controller.lowS),
      neutralUs: toUs(controller.neutralS),
      highUs: toUs(controller.highS),
    },
    pwmHz: to(controller.pwmHz, 10),
    capacitorF: to(line.capacitanceF * random.between(0.95, 1.1), 0.1e-3),
  };
}
const labelPack = ({ pack }: CarParameters): Pack => ({
  kind: 'pack',
  name: 'Quarry 2S',
  cells: 2,
  chemistry: 'lipo',
  capacityAh: to(pack.capacityAh, 0.1),
});

const labelLeads = ({ joints }: CarParameters): Leads => ({
  kind: 'leads',
  name: 'Marmot leads',
  joints: joints.map(({ name, kind, gaugeAwg, lengthM }) => ({ name, kind, gaugeAwg, lengthM })),
});

const labelDrive = ({ drive }: CarParameters): Drive => ({
  kind: 'drive',
  name: 'Marmot drive train',
  pinionTeeth: drive.pinionTeeth,
  spurTeeth: drive.spurTeeth,
  internalRatio: to(drive.internalRatio, 0.01),
  tyreDiameterM: to(drive.tyreDiameterM, 0.001),
});

export function labelCar(seed: number, car: CarParameters): Car {
  const random = seededRandom(seed, 'label');
  return {
    name: `Marmot no. ${seed}`,
    motor: labelMotor(random.stream('motor'), car),
    servo: labelServo(random.stream('servo'), car),
    controller: labelController(random.stream('controller'), car),
    pack: labelPack(car),
    drive: labelDrive(car),
    leads: labelLeads(car),
  };
}
