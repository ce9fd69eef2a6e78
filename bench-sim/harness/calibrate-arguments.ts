// SPDX-License-Identifier: MIT
// The words of `npm run calibrate`, parsed and checked against each other. It opens nothing.
import { parseArgs } from 'node:util';
import { BadUsage } from './bad-usage.ts';
import { seedOf } from './command-arguments.ts';

export const calibrateUsage = `Usage:
  npm run calibrate -- --rig virtual [--seed N] [--store FILE] [--meter FILE] [--tap ID]... [--thermistors ice|together] [--feed taps|meter] [--json]
  npm run calibrate -- --rig <serial device> (--car FILE | --seed N) [--meter FILE] [--tap ID]... [--thermistors ice|together] [--feed taps|meter] [--json]`;

export interface CalibrateArguments {
  /** 'virtual' or a serial device. */
  readonly rig: string;
  readonly seed: number | null;
  readonly car: string | null;
  readonly store: string | null;
  readonly meter: string | null;
  /** Empty: everything that can be calibrated. */
  readonly taps: readonly string[];
  readonly thermistors: 'ice' | 'together';
  readonly feed: 'taps' | 'meter';
  readonly json: boolean;
}
const options = {
  rig: { type: 'string' },
  seed: { type: 'string' },
  car: { type: 'string' },
  store: { type: 'string' },
  meter: { type: 'string' },
  tap: { type: 'string', multiple: true },
  thermistors: { type: 'string' },
  feed: { type: 'string' },
  json: { type: 'boolean' },
} as const;
const bad = (words: string): BadUsage => new BadUsage('badFlag', `${words}\n${calibrateUsage}`);

/** Throws BadUsage. */
export function parseCalibrateArguments(words: readonly string[]): CalibrateArguments {
  const values = parsed(words);
  const { rig, car = null, store = null, meter = null } = values;
  if (rig === undefined) throw bad('Which rig? Give --rig virtual or --rig with a serial device.');
  const seed = values.seed === undefined ? null : seedOf(values.seed);
  if (rig === 'virtual' && car !== null)
    throw bad('The virtual rig brings its own car: choose it by --seed, without --car.');
  if (rig !== 'virtual' && store !== null)
    throw bad('--store belongs to the virtual rig; a rig on a serial device keeps its own.');
  if (rig !== 'virtual' && (car === null) === (seed === null))
    throw bad(`What car is on ${rig}? Give --car FILE or --seed N, one of them.`);
  return {
    rig,
    seed,
    car,
    store,
    meter,
    taps: values.tap ?? [],
    thermistors: oneOf('--thermistors', values.thermistors, ['ice', 'together']),
    feed: oneOf('--feed', values.feed, ['taps', 'meter']),
    json: values.json ?? false,
  };
}
function oneOf<T extends string>(flag: string, given: string | undefined, known: readonly [T, T]): T {
  if (given === undefined) return known[0];
  const found = known.find((word) => word === given);
  if (!found) throw bad(`${flag} takes ${known.join(' or ')}, not "${given}".`);
  return found;
}
function parsed(words: readonly string[]) {
  try {
    return parseArgs({ args: [...words], options, strict: true }).values;
  } catch (cause) {
    const [first] = (cause as Error).message.split(/\. |\n/);
    throw new BadUsage('badFlag', `${first}.\n${calibrateUsage}`, { cause });
  }
}
