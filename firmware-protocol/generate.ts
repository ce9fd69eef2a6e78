// SPDX-License-Identifier: MIT
// Writes what host, firmware and PROTOCOL.md share from messages.tsv, codes.tsv and constants.tsv.
// Run: npx tsx firmware-protocol/generate.ts   (with --check it writes nothing and fails on a difference)
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { headerOf } from './definition/header-emitter.ts';
import { typescriptOf } from './definition/typescript-emitter.ts';
import { readWireDefinition } from './definition/wire-definition.ts';

const room = (path: string): URL => new URL(path, import.meta.url);
const text = (path: string): string => (existsSync(room(path)) ? readFileSync(room(path), 'utf8') : '');

function wanted(): Map<string, string> {
  const definition = readWireDefinition(text('messages.tsv'), text('codes.tsv'), text('constants.tsv'));
  return new Map([
    ['ts/generated-messages.ts', typescriptOf(definition)],
    ['firmware/logic/generated_messages.h', headerOf(definition)],
  ]);
}

function check(stale: readonly string[]): void {
  if (stale.length === 0) return;
  process.stderr.write(
    `Out of step with the wire tables: ${stale.join(', ')}.\nRun: npx tsx firmware-protocol/generate.ts\n`,
  );
  process.exitCode = 1;
}

const files = wanted();
const stale = [...files].filter(([path, content]) => text(path) !== content).map(([path]) => path);
if (process.argv.includes('--check')) check(stale);
else for (const path of stale) writeFileSync(room(path), files.get(path) ?? '');
