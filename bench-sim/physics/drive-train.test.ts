// SPDX-License-Identifier: MIT
// A spur of n teeth against a pinion of m: angles in the ratio m/n, drag that comes back after a turn of the spur, and the
// balance of torque at a steady speed.
import { describe, expect, it } from 'vitest';
import { drawDrive } from './drive-draw.ts';
import { DriveMotor } from './drive-motor.ts';
import { DriveTrain, spurDragNm, spurDrags } from './drive-train.ts';
import { drawParameters } from './population.ts';
import { seededRandom } from '../seeded-random.ts';

const drawn = drawDrive(seededRandom(4, 'drive'));
const plain = { ...drawn, pinionTeeth: 20, spurTeeth: 80, runOutNm: 0, eccentricNm: 0 };

describe('a drive train', () => {
  it('turns the spur by the teeth: 20 against 80 is a quarter', () => {
    const train = new DriveTrain(plain);
    train.dotUp();
    train.turned(2 * Math.PI);
    expect(train.spurRad).toBeCloseTo(Math.PI / 2, 12);
  });
  it('has its most drag where it is tight, and the same again a turn later', () => {
    const tight = { ...plain, tightNm: 2e-3, tightRad: (100 * Math.PI) / 180 };
    expect(spurDrags(tight).tightDegrees).toBeCloseTo(100, 6);
    // 1 - e^(-2 sharpness) of the tight torque from its place to the opposite one.
    expect(spurDrags(tight).spanNm).toBeCloseTo(2e-3 * (1 - Math.exp(-10)), 9);
    expect(spurDragNm(tight, 1 + 2 * Math.PI)).toBeCloseTo(spurDragNm(tight, 1), 12);
  });
  it('adds its drag to that of the motor: torque per ampere times the current is both at a steady speed', () => {
    const stepS = 8e-6;
    const { motor: p } = drawParameters(2);
    const motor = new DriveMotor(p, 0.005, stepS);
    motor.loadNm = 2e-3;
    motor.addedKgM2 = 1e-6;
    for (let k = 0; k < 2 / stepS; k++) motor.step(0.15, 0, 8);
    const lossNm = p.coulombNm + p.viscousNms * motor.speedRadS + p.quadraticNms2 * motor.speedRadS ** 2;
    expect((p.fluxVs * motor.currentA) / (lossNm + 2e-3)).toBeCloseTo(1, 4);
  });
  it('does not move the motor before the torque beats friction and load together', () => {
    const { motor: p } = drawParameters(2);
    const motor = new DriveMotor(p, 0.005, 8e-6);
    motor.loadNm = 1;
    for (let k = 0; k < 1000; k++) motor.step(0.05, 0, 8);
    expect(motor.speedRadS).toBe(0);
  });
});
