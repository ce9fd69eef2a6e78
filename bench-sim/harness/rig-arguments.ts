// SPDX-License-Identifier: MIT
// The words of `npm run rig`, parsed. It opens nothing.
import { parseArgs } from 'node:util';
import type { Faults } from '#sim/faults/faults';
import { BadUsage } from './bad-usage.ts';
import { faultsOf, seedOf } from './command-arguments.ts';

export const rigUsage = `Usage:
  npm run rig -- --pty PATH [--seed N] [--fault name=severity]... [--scene SOCKET] [--store FILE]`;

export interface RigArguments {
  readonly pty: string;
  readonly seed: number;
  readonly faults: Faults;
  readonly scene: string | null;
  /** File that keeps the EEPROM from one start to the next. */
  readonly store: string | null;
}
const options = {
  pty: { type: 'string' },
  seed: { type: 'string' },
  fault: { type: 'string', multiple: true },
  scene: { type: 'string' },
  store: { type: 'string' },
} as const;

/** Throws BadUsage. */
export function parseRigArguments(words: readonly string[]): RigArguments {
  const values = parsed(words);
  if (values.pty === undefined)
    throw new BadUsage('badFlag', `Where is the rig to be? Give --pty PATH.\n${rigUsage}`);
  return {
    pty: values.pty,
    seed: seedOf(values.seed ?? '1'),
    faults: faultsOf(values.fault ?? []),
    scene: values.scene ?? null,
    store: values.store ?? null,
  };
}
function parsed(words: readonly string[]) {
  try {
    return parseArgs({ args: [...words], options, strict: true }).values;
  } catch (cause) {
    const [first] = (cause as Error).message.split(/\. |\n/);
    throw new BadUsage('badFlag', `${first}.\n${rigUsage}`, { cause });
  }
}
