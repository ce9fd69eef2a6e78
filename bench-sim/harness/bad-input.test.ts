// SPDX-License-Identifier: MIT
// The table of bad input that README.md beside this file shows: what was given, the exit code, the words a person
// gets. Every row is done here, and its words must stand in that table, so that neither can go astray alone.
import { mkdtempSync, readFileSync, writeFileSync, existsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Car } from '#core/parts/part';
import { testRig } from '#core/samples/scan-block-fixture';
import { drawCar } from '#sim/physics/population';
import { BadUsage } from './bad-usage.ts';
import { readCar, requireSoundLimits } from './car-file.ts';
import { findCheck } from './check-catalog.ts';
import { parseArguments } from './command-arguments.ts';
import { errorDocument, exitOfError } from './exit-code.ts';
import { firmwareHex } from './firmware-file.ts';
import { handsFor } from './hands.ts';
import { parsePerfArguments } from './perf-arguments.ts';
import { requireWritable } from './record-file.ts';
import { parseRigArguments } from './rig-arguments.ts';

const folder = mkdtempSync(join(tmpdir(), 'bad-input-'));
const manual = readFileSync(join(import.meta.dirname, 'README.md'), 'utf8');
const fileWith = (name: string, content: string): string => {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
};
type Loose = Record<string, Record<string, unknown>>;
const carWith = (change: (car: Loose) => void) => () => {
  const car = structuredClone(drawCar(1).car) as unknown as Loose;
  change(car);
  return readCar(fileWith('car.json', JSON.stringify(car)));
};
const own = {
  checkResultId: 'motor-no-load/no-load-current',
  max: 3.3,
  reason: 'its own last season',
  date: '2026-11-20',
};
const strayBaseline = {
  checkResultId: 'motor-no-load/torque',
  partName: 'Marmot 13.5T',
  unit: 'N.m',
  centre: 0.1,
  sigma: 0.01,
  runIds: ['a', 'b'],
  fromDate: '2026-11-01',
  toDate: '2026-11-02',
  rigSerial: '17',
};
/** Sound by itself, and told once the rig is known. */
const limited = (change: Partial<Car>) => () =>
  requireSoundLimits('car.json', { ...drawCar(1).car, ...change }, testRig());
const line = (text: string) => () => parseArguments(text.split(' '));
const whole = firmwareHex();

const cases: readonly (readonly [what: string, attempt: () => unknown, code: string, words: string])[] = [
  [
    'unknown check or plan',
    () => findCheck('wheel-balance'),
    'unknownCheck',
    'There is no check or plan "wheel-balance". Known checks:',
  ],
  ['unknown flag', line('run rail-sag --rig virtual --colour red'), 'badFlag', "Unknown option '--colour'."],
  ['flag without value', line('run rail-sag --rig'), 'badFlag', "Option '--rig <value>' argument missing."],
  ['no rig', line('run rail-sag'), 'badFlag', 'Which rig? Give --rig virtual or --rig with a serial device.'],
  ['unknown command', line('walk'), 'badFlag', 'There is no command "walk".'],
  [
    'unknown fault',
    line('run rail-sag --rig virtual --fault rust=1'),
    'unknownFault',
    'There is no fault "rust". Known faults:',
  ],
  [
    'severity beyond 1',
    line('run rail-sag --rig virtual --fault soft-rail=1.5'),
    'unknownFault',
    'The severity of "soft-rail" must be a number from 0 to 1, not "1.5".',
  ],
  [
    'severity below 0',
    line('run rail-sag --rig virtual --fault soft-rail=-0.1'),
    'unknownFault',
    'The severity of "soft-rail" must be a number from 0 to 1, not "-0.1".',
  ],
  [
    'severity not a number',
    line('run rail-sag --rig virtual --fault soft-rail=much'),
    'unknownFault',
    'The severity of "soft-rail" must be a number from 0 to 1, not "much".',
  ],
  [
    'seed not a whole number',
    line('run rail-sag --rig virtual --seed 1.5'),
    'badSeed',
    '--seed takes a whole number from 0 to 4294967295, not "1.5".',
  ],
  [
    'serial rig without a car',
    line('run rail-sag --rig /dev/x'),
    'badFlag',
    'What car is on /dev/x? Give --car FILE,',
  ],
  [
    'record into a missing folder',
    () => requireWritable('/nowhere/at/all.json'),
    'badFile',
    'The folder /nowhere/at for --record does not exist. Make it first.',
  ],
  [
    "record that can't be written",
    () => requireWritable(join(fileWith('file', ''), 'run.json')),
    'badFile',
    "can't be written:",
  ],
  [
    'record without a name',
    () => requireWritable(''),
    'badFile',
    '--record takes the name of a file; none was given.',
  ],
  [
    'no car file',
    () => readCar('/nowhere/car.json'),
    'badFile',
    "The car file /nowhere/car.json can't be read:",
  ],
  [
    'car file not JSON',
    () => readCar(fileWith('half.json', '{"motor":')),
    'badCar',
    'half.json is not JSON:',
  ],
  [
    'negative rating',
    carWith((car) => (car.motor.ratedNoLoadA = -1)),
    'badCar',
    'motor.ratedNoLoadA: rated no-load current must be more than 0 A',
  ],
  [
    'no pole pairs',
    carWith((car) => (car.motor.polePairs = 0)),
    'badCar',
    'motor.polePairs: a motor has at least one pole pair',
  ],
  [
    '0 turns',
    carWith((car) => (car.motor.turns = 0)),
    'badCar',
    'motor.turns: turns must be more than 0 turns',
  ],
  ['part missing', carWith((car) => Reflect.deleteProperty(car, 'motor')), 'badCar', 'motor: is missing'],
  [
    'rating missing',
    carWith((car) => Reflect.deleteProperty(car.servo, 'ratedVoltageV')),
    'badCar',
    'servo.ratedVoltageV: rated voltage: a number in V is needed',
  ],
  [
    'misspelt or foreign field',
    carWith((car) => (car.motor.ratedNoLoadAmp = 3)),
    'badCar',
    'motor.ratedNoLoadAmp: there is no such field',
  ],
  [
    'throttle out of order',
    carWith((car) => (car.controller.throttle = { lowUs: 1600, neutralUs: 1500, highUs: 2000 })),
    'badCar',
    'controller.throttle: the widths must rise from low over neutral to high',
  ],
  [
    'winding resistance in mohm',
    carWith((car) => (car.motor.windingOhm = { ohm: 14, u: 0.2 })),
    'badCar',
    'motor.windingOhm.ohm: measured winding resistance can be at most 2 ohm',
  ],
  [
    'limit without a reason',
    carWith((car) => Object.assign(car, { overrides: [{ ...own, reason: '' }] })),
    'badCar',
    'overrides.0.reason: say why in at least 8 letters; it is shown beside every verdict',
  ],
  [
    'limit of a result no check has',
    limited({ overrides: [{ ...own, checkResultId: 'motor-no-load/torque' }] }),
    'badCar',
    'No check has a result "motor-no-load/torque". There are:',
  ],
  [
    'limit in mA',
    limited({ overrides: [{ ...own, max: 3300 }] }),
    'badCar',
    'The upper bound 3300 A is more than 30 times above the default',
  ],
  [
    'baseline of a result no check has',
    limited({ baselines: [strayBaseline] }),
    'badCar',
    'There is a baseline of "motor-no-load/torque", and no check has that result.',
  ],
  [
    'firmware missing',
    () => firmwareHex('/nowhere/rig.hex'),
    'badFirmware',
    "The firmware file /nowhere/rig.hex can't be read:",
  ],
  [
    'firmware cut off',
    () => firmwareHex(fileWith('cut.hex', whole.slice(0, whole.lastIndexOf(':')))),
    'badFirmware',
    'The firmware file is cut off: no end record',
  ],
  [
    'firmware cut inside a line',
    () => firmwareHex(fileWith('torn.hex', whole.slice(0, 5000))),
    'badFirmware',
    'The firmware file is damaged at line',
  ],
  ['rig without a place', () => parseRigArguments([]), 'badFlag', 'Where is the rig to be? Give --pty PATH.'],
  ['benchmarks with a word', () => parsePerfArguments(['now']), 'badFlag', "Unexpected argument 'now'"],
];

describe('bad input', () => {
  it.each(cases)('%s: exit code 2, with words', (what, attempt, code, words) => {
    const thrown = (() => {
      try {
        attempt();
        return null;
      } catch (error) {
        return error;
      }
    })();
    expect(thrown).toBeInstanceOf(BadUsage);
    expect(exitOfError(thrown)).toBe(2);
    const { error } = errorDocument(thrown);
    expect(error.code).toBe(code);
    expect(error.message).toContain(words);
    const row = manual.split('\n').find((text) => text.startsWith(`| ${what} |`));
    expect(row, `README.md has no row "${what}"`).toBeDefined();
    expect(row).toContain(`| \`${code}\` |`);
    expect(row).toContain(words);
  });
  it("takes a car whose own limits and baselines are the checks'", () =>
    expect(limited({ overrides: [own] })).not.toThrow());
  it('leaves a record alone that is there, and no empty file where none was', () => {
    const kept = fileWith('kept.json', 'kept');
    requireWritable(kept);
    expect(readFileSync(kept, 'utf8')).toBe('kept');
    const fresh = join(folder, 'fresh.json');
    requireWritable(fresh);
    expect(existsSync(fresh)).toBe(false);
  });
  it('says what must be done by hand when there is nobody to ask', async () => {
    const wasTerminal = process.stdin.isTTY;
    process.stdin.isTTY = false;
    const asked = handsFor({ scene: null, handsReady: false })('Rest the horn against the block');
    process.stdin.isTTY = wasTerminal;
    await expect(asked).rejects.toThrow(/Somebody must do this at the bench: "Rest the horn.*--hands-ready/);
  });
});
