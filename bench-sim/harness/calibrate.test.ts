// SPDX-License-Identifier: MIT
// Bad words and files for `npm run calibrate` and --store, and numbers as people type them.
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { usualMeter } from '#core/calibration/meter';
import { BadUsage } from './bad-usage.ts';
import { parseCalibrateArguments } from './calibrate-arguments.ts';
import { parseArguments } from './command-arguments.ts';
import { readMeterFile } from './meter-file.ts';
import { readStoreFile, writeStoreFile } from './store-file.ts';

const folder = mkdtempSync(join(tmpdir(), 'calibrate-'));
function file(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}
const meter = (change: object) => JSON.stringify({ ...usualMeter, ...change });

describe('calibrate', () => {
  it('takes a virtual rig with its store, meter and taps', () =>
    expect(
      parseCalibrateArguments(
        '--rig virtual --seed 3 --store s --meter m --tap railVoltage --tap railCurrent'.split(' '),
      ),
    ).toMatchObject({
      rig: 'virtual',
      seed: 3,
      store: 's',
      meter: 'm',
      taps: ['railVoltage', 'railCurrent'],
    }));
  it.each([
    ['', /Which rig/],
    ['--rig', /argument missing/],
    ['--rig virtual --sed 3', /Unknown option '--sed'/],
    ['--rig virtual --seed -x', /--seed|ambiguous/],
    ['--rig virtual --car c.json', /brings its own car/],
    ['--rig virtual --thermistors oven', /--thermistors takes ice or together, not "oven"/],
    ['--rig virtual --feed guess', /--feed takes taps or meter, not "guess"/],
    ['--rig /dev/x', /What car is on \/dev\/x/],
    ['--rig /dev/x --car c --seed 1', /one of them/],
    ['--rig /dev/x --seed 1 --store s', /--store belongs to the virtual rig/],
  ])('refuses "%s" with words', (line, told) => {
    const attempt = () => parseCalibrateArguments(line === '' ? [] : line.split(' '));
    expect(attempt).toThrow(BadUsage);
    expect(attempt).toThrow(told);
  });
  it('refuses a store for a check on a serial device', () =>
    expect(() => parseArguments('run rail-sag --rig /dev/x --seed 1 --store s'.split(' '))).toThrow(
      /--store belongs to the virtual rig/,
    ));
});
describe('a meter file', () => {
  it('is taken when sound', () => expect(readMeterFile(file('good.json', meter({})))).toEqual(usualMeter));
  it.each([
    ['half.json', '{', /is not JSON/],
    ['nameless.json', meter({ name: '' }), /name: the meter needs a name/],
    [
      'negative.json',
      meter({ ranges: [{ ...usualMeter.ranges[0], counts: -1 }] }),
      /ranges\.0\.counts: counts must/,
    ],
    ['foreign.json', meter({ colour: 'red' }), /Unrecognized key: "colour"/],
  ])('%s is refused with the field and what to do', (name, content, told) => {
    const attempt = () => readMeterFile(file(name, content));
    expect(attempt).toThrow(BadUsage);
    expect(attempt).toThrow(told);
    expect(attempt).toThrow(/Put it right in the file and run again/);
  });
  it('that is not there is told', () =>
    expect(() => readMeterFile(join(folder, 'nowhere'))).toThrow(/can't be read: .*Give --meter/));
});
describe('a store file', () => {
  it('comes back as it was written; none yet is a blank rig', () => {
    const path = join(folder, 'rig.store');
    expect(readStoreFile(path)).toBeUndefined();
    writeStoreFile(path, new Uint8Array(1024).fill(7));
    expect(readStoreFile(path)).toEqual(new Uint8Array(1024).fill(7));
  });
  it('of another length is refused with words', () =>
    expect(() => readStoreFile(file('short.store', 'abc'))).toThrow(
      /holds 3 bytes; the memory of a rig has 1024/,
    ));
  it('that is a folder or lies nowhere is refused with words', () => {
    expect(() => readStoreFile(folder)).toThrow(/can't be used: .*Choose another place for --store/);
    expect(() => writeStoreFile('/nowhere/at/all', new Uint8Array(1))).toThrow(BadUsage);
  });
});
