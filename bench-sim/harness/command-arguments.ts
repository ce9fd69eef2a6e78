// SPDX-License-Identifier: MIT
// The words of the command line, parsed and checked against each other. It opens nothing.
import { parseArgs } from 'node:util';
import { parseFault, type Faults } from '#sim/faults/faults';
import { BadUsage } from './bad-usage.ts';

export const usage = `Usage:
  npm run check -- list [--json]
  npm run check -- run <check or plan> --rig virtual [--seed N] [--fault name=severity]... [--store FILE] [--json] [--record FILE] [--resume FILE]
  npm run check -- run <check or plan> --rig <serial device> (--car FILE | --seed N) [--scene SOCKET | --hands-ready] [--json] [--record FILE] [--resume FILE]`;

export interface RunArguments {
  readonly command: 'run';
  readonly check: string;
  /** 'virtual' or a serial device. */
  readonly rig: string;
  readonly faults: Faults;
  readonly seed: number | null;
  readonly car: string | null;
  readonly scene: string | null;
  readonly handsReady: boolean;
  /** File with the memory of the virtual rig, as calibrate left it. */
  readonly store: string | null;
  readonly record: string | null;
  /** Record of a plan that was interrupted. */
  readonly resume: string | null;
  readonly json: boolean;
}
export type Arguments = { readonly command: 'list'; readonly json: boolean } | RunArguments;

const options = {
  rig: { type: 'string' },
  seed: { type: 'string' },
  fault: { type: 'string', multiple: true },
  car: { type: 'string' },
  scene: { type: 'string' },
  'hands-ready': { type: 'boolean' },
  store: { type: 'string' },
  record: { type: 'string' },
  resume: { type: 'string' },
  json: { type: 'boolean' },
} as const;
const bad = (words: string): BadUsage => new BadUsage('badFlag', `${words}\n${usage}`);

/** Throws BadUsage. */
export function parseArguments(words: readonly string[]): Arguments {
  const { values, positionals } = parsed(words);
  const [command, check, ...rest] = positionals;
  const json = values.json ?? false;
  if (command === 'list' && check === undefined) return { command, json };
  if (command !== 'run') throw bad(command ? `There is no command "${command}".` : 'A command is missing.');
  if (check === undefined) throw bad('Which check or plan is to run?');
  if (rest.length > 0) throw bad(`One check at a time: "${rest[0]}" is too much.`);
  if (values.rig === undefined) throw bad('Which rig? Give --rig virtual or --rig with a serial device.');
  const run: RunArguments = {
    command,
    check,
    json,
    rig: values.rig,
    faults: faultsOf(values.fault ?? []),
    seed: values.seed === undefined ? null : seedOf(values.seed),
    car: values.car ?? null,
    scene: values.scene ?? null,
    handsReady: values['hands-ready'] ?? false,
    store: values.store ?? null,
    record: values.record ?? values.resume ?? null,
    resume: values.resume ?? null,
  };
  if (run.rig === 'virtual') requireVirtual(run);
  else requireSerial(run);
  return run;
}
function parsed(words: readonly string[]) {
  try {
    return parseArgs({ args: [...words], options, allowPositionals: true, strict: true });
  } catch (cause) {
    const [first] = (cause as Error).message.split(/\. |\n/);
    throw new BadUsage('badFlag', `${first}.\n${usage}`, { cause });
  }
}
export function seedOf(text: string): number {
  const seed = Number(text);
  if (/^\d+$/.test(text) && seed <= 0xffffffff) return seed;
  throw new BadUsage('badSeed', `--seed takes a whole number from 0 to 4294967295, not "${text}".`);
}
export function faultsOf(texts: readonly string[]): Faults {
  const faults: Record<string, number> = {};
  for (const text of texts) {
    const { name, severity } = fault(text);
    faults[name] = severity;
  }
  return faults;
}
function fault(text: string) {
  try {
    return parseFault(text);
  } catch (cause) {
    throw new BadUsage('unknownFault', (cause as Error).message, { cause });
  }
}
function requireVirtual({ car, scene }: RunArguments): void {
  if (car !== null)
    throw bad('The virtual rig brings its own car with its labels: choose it by --seed, without --car.');
  if (scene !== null) throw bad('The virtual rig in this program has its own person: leave --scene away.');
}
function requireSerial({ rig, car, seed, faults, store }: RunArguments): void {
  if (store !== null)
    throw bad('--store belongs to the virtual rig in this program; any other keeps its own.');
  if (Object.keys(faults).length > 0)
    throw bad(`Faults belong to the virtual rig: give them to it, not to the check on ${rig}.`);
  if (car === null && seed === null)
    throw bad(
      `What car is on ${rig}? Give --car FILE, or --seed N when it is a virtual rig on a pseudo-terminal with that seed.`,
    );
  if (car !== null && seed !== null) throw bad('--car and --seed both tell the car: give one of them.');
}
