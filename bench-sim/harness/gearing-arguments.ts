// SPDX-License-Identifier: MIT
// The words of `npm run gearing`, checked, and the figures they leave to the car's labels or to memory. It opens
// and prints nothing.
import { parseArgs } from 'node:util';
import { pinionsFrom, ratioForRollOut, ratioForSpeed } from '#core/gearing/gear-choice';
import type { Figure, PullFigures } from '#core/gearing/gearing-sheet';
import type { Car, Drive } from '#core/parts/part';
import { typedQuantity } from '#core/units/typed-quantity';
import type { Dimension } from '#core/units/units';
import { readRecord } from '#core/record/record-reader';
import { BadUsage } from './bad-usage.ts';
import { readTextFile } from './json-file.ts';

const usage =
  'Usage: npm run gearing -- --car FILE [--pinions 20-28] [--kv RPM_PER_V | --measured RECORD] [--volts V] [--ohm OHM] [--amps A] [--ratio R | --rollout "31 mm" | --speed "45 km/h"] [--json]';
const names = [
  'car',
  'pinions',
  'kv',
  'measured',
  'volts',
  'ohm',
  'amps',
  'ratio',
  'rollout',
  'speed',
] as const;
export type Values = Partial<Record<(typeof names)[number], string>> & { json?: boolean };
/** Of a 1:10 truck at work; from memory. */
const usual = { cellV: 3.9, ohm: 0.03, amps: 20, share: 0.2 } as const;
export const badGearing = (words: string): BadUsage => new BadUsage('badFlag', `${words}\n${usage}`);

export function gearingArguments(words: readonly string[]): Values {
  const text = Object.fromEntries(names.map((name) => [name, { type: 'string' } as const]));
  try {
    return parseArgs({ args: [...words], options: { ...text, json: { type: 'boolean' } } }).values as Values;
  } catch (cause) {
    throw badGearing((cause as Error).message);
  }
}
export function driveOf({ drive, name }: Car): Drive {
  if (drive) return drive;
  throw new BadUsage(
    'badCar',
    `The car "${name}" has no drive train: add "drive" with pinionTeeth, spurTeeth, internalRatio and tyreDiameterM.`,
  );
}
function figure(flag: string, given: string | undefined, assumed: Figure): Figure {
  if (given === undefined) return assumed;
  const value = Number(given);
  if (!(value > 0)) throw badGearing(`--${flag} takes a number above 0, not "${given}".`);
  return { value, halfWidth: 0, origin: `--${flag}` };
}
/** kV as a run of motor-no-load found it. */
function measuredKv(path: string): Figure {
  const record = readRecord(readTextFile(path));
  const kv = record.findings.find(({ id }) => id === 'kv');
  if (!kv?.measured)
    throw new BadUsage('badFile', `The record ${path} holds no measured kV: give one of motor-no-load.`);
  return {
    value: kv.value,
    halfWidth: (kv.interval[1] - kv.interval[0]) / 2,
    origin: `measured ${record.startedAt}`,
  };
}
function labelKv({ motor }: Car): Figure {
  const { ratedKvRpmPerV: value, ratedKvTolerance } = motor;
  return { value, halfWidth: value * ratedKvTolerance, origin: 'label of the motor' };
}
export function figuresOf(car: Car, drive: Drive, { kv, measured, volts, ohm, amps }: Values): PullFigures {
  if (kv !== undefined && measured !== undefined) throw badGearing('One of --kv and --measured at a time.');
  const { pack } = car;
  const assumed = (value: number): Figure => ({
    value,
    halfWidth: value * usual.share,
    origin: 'assumed, from memory',
  });
  return {
    kvRpmPerV: figure('kv', kv, measured === undefined ? labelKv(car) : measuredKv(measured)),
    packV: figure('volts', volts, { ...assumed(usual.cellV * pack.cells), halfWidth: 0.2 * pack.cells }),
    seriesOhm: figure('ohm', ohm, assumed(usual.ohm)),
    currentA: figure('amps', amps, assumed(usual.amps)),
    tyreM: { value: drive.tyreDiameterM, halfWidth: 0.01 * drive.tyreDiameterM, origin: 'the part' },
  };
}
export function pinionsOf(given: string | undefined, { pinionTeeth }: Drive): number[] {
  if (given === undefined) return pinionsFrom(Math.max(5, pinionTeeth - 4), pinionTeeth + 4);
  const found = /^(\d+)(?:-(\d+))?$/.exec(given);
  const [from, to] = [Number(found?.[1]), Number(found?.[2] ?? found?.[1])];
  if (found && from >= 5 && to >= from && to <= 99) return pinionsFrom(from, to);
  throw badGearing(`--pinions takes teeth as "24" or "20-28", 5 to 99, not "${given}".`);
}
function typed(flag: string, text: string, dimension: Dimension): number {
  const read = typedQuantity(text, dimension);
  if (read.ok && read.si > 0) return read.si;
  throw badGearing(`--${flag}: ${read.ok ? 'it must be more than 0.' : read.words}`);
}
export function targetOf({ ratio, rollout, speed }: Values, drive: Drive, motorRpm: number): number | null {
  if ([ratio, rollout, speed].filter((given) => given !== undefined).length > 1)
    throw badGearing('One of --ratio, --rollout and --speed at a time.');
  if (ratio !== undefined) return figure('ratio', ratio, { value: 0, halfWidth: 0, origin: '' }).value;
  if (rollout !== undefined) return ratioForRollOut(typed('rollout', rollout, 'length'), drive);
  return speed === undefined ? null : ratioForSpeed(typed('speed', speed, 'speed'), motorRpm, drive);
}
