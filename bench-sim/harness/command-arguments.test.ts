// SPDX-License-Identifier: MIT
import { describe, expect, it } from 'vitest';
import { RigError } from '#session/rig-error';
import { BadUsage } from './bad-usage.ts';
import { parseArguments } from './command-arguments.ts';
import { errorDocument, exitOf, exitOfError } from './exit-code.ts';

const words = (line: string) => line.split(' ');

describe('the command line', () => {
  it('takes a run on the virtual rig with seed and faults', () => {
    const line = 'run rail-sag --rig virtual --seed 7 --fault soft-rail=0.5 --fault noisy-cable=1 --json';
    expect(parseArguments(words(line))).toMatchObject({
      command: 'run',
      check: 'rail-sag',
      rig: 'virtual',
      seed: 7,
      faults: { 'soft-rail': 0.5, 'noisy-cable': 1 },
      json: true,
    });
  });
  it('takes a serial device with a car file or a seed', () => {
    expect(parseArguments(words('run rail-sag --rig /dev/ttyUSB0 --car car.json'))).toMatchObject({
      car: 'car.json',
    });
    expect(parseArguments(words('run rail-sag --rig /tmp/rig --seed 3 --scene /tmp/s'))).toMatchObject({
      seed: 3,
      scene: '/tmp/s',
    });
  });
  it.each([
    ['', /A command is missing/],
    ['walk', /no command "walk"/],
    ['run', /Which check/],
    ['run rail-sag', /Which rig/],
    ['run rail-sag servo-stall --rig virtual', /One check at a time/],
    ['run rail-sag --rig virtual --sed 3', /Unknown option '--sed'/],
    ['run rail-sag --rig virtual --seed -1', /--seed|argument is ambiguous/],
    ['run rail-sag --rig virtual --seed 1.5', /whole number .* not "1.5"/],
    ['run rail-sag --rig virtual --seed x', /whole number/],
    ['run rail-sag --rig virtual --fault rust=1', /no fault "rust"\. Known faults: .*worn-bearings/],
    ['run rail-sag --rig virtual --fault soft-rail=1.5', /number from 0 to 1, not "1.5"/],
    ['run rail-sag --rig virtual --fault soft-rail=', /number from 0 to 1/],
    ['run rail-sag --rig virtual --car c.json', /virtual rig brings its own car/],
    ['run rail-sag --rig /dev/x', /What car is on \/dev\/x/],
    ['run rail-sag --rig /dev/x --seed 1 --car c.json', /give one of them/],
    ['run rail-sag --rig /dev/x --seed 1 --fault soft-rail=1', /Faults belong to the virtual rig/],
  ])('refuses "%s" with words', (line, told) => {
    const attempt = () => parseArguments(line === '' ? [] : words(line));
    expect(attempt).toThrow(BadUsage);
    expect(attempt).toThrow(told);
  });
});
describe('exit codes', () => {
  it.each([
    ['done', 'pass', 0],
    ['done', 'fail', 1],
    ['done', 'undecided', 3],
    ['failed', 'not measured', 3],
    ['tripped', 'not measured', 4],
    ['stopped', 'not measured', 4],
    ['link lost', 'not measured', 5],
  ] as const)('%s with %s ends with %i', (kind, verdict, code) => {
    expect(exitOf({ ending: { kind, words: '' }, verdict })).toBe(code);
  });
  it('tells usage from a rig that is not there', () => {
    expect(exitOfError(new BadUsage('unknownCheck', 'x'))).toBe(2);
    expect(exitOfError(new RigError('noRig', 'x'))).toBe(5);
    expect(errorDocument(new RigError('portBusy', 'The device /dev/x is in use.'))).toEqual({
      error: {
        code: 'portBusy',
        message:
          'The device /dev/x is in use. Close the other program or page that uses the port, and connect again.',
      },
    });
  });
});
