// SPDX-License-Identifier: MIT
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { drawCar } from '#sim/physics/population';
import { BadUsage } from './bad-usage.ts';
import { readCar } from './car-file.ts';

const folder = mkdtempSync(join(tmpdir(), 'car-'));
const fileWith = (content: string): string => {
  const path = join(folder, 'car.json');
  writeFileSync(path, content);
  return path;
};
const changed = (change: (car: ReturnType<typeof drawCar>['car']) => void): string => {
  const car = structuredClone(drawCar(1).car);
  change(car);
  return JSON.stringify(car);
};

describe('a car from a file', () => {
  it('is read as it was drawn', () => {
    expect(readCar(fileWith(changed(() => {}))).motor.kind).toBe('motor');
  });
  it.each([
    [
      'a negative kV',
      changed((car) => (car.motor.ratedKvRpmPerV = -5)),
      /motor\.ratedKvRpmPerV: rated kV must be more than 0/,
    ],
    [
      'a rail of 40 V',
      changed((car) => (car.controller.railSettingV = 40)),
      /railSettingV: rail setting can be at most 9 V/,
    ],
    ['no pole pairs', changed((car) => (car.motor.polePairs = 0)), /at least one pole pair/],
    ['nothing in it', '{}', /motor/],
    ['no JSON', '{"motor":', /is not JSON/],
  ])('refuses %s and says what is wrong', (_, content, told) => {
    const attempt = () => readCar(fileWith(content));
    expect(attempt).toThrow(BadUsage);
    expect(attempt).toThrow(told);
  });
  it('says when there is no such file', () => {
    expect(() => readCar(join(folder, 'none.json'))).toThrow(/can't be read/);
  });
});
