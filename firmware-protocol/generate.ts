// SPDX-License-Identifier: MIT
// Writes what host, firmware and PROTOCOL.md share from messages.tsv, codes.tsv and constants.tsv.
// Run: npx tsx firmware-protocol/generate.ts   (with --check it writes nothing and fails on a difference)
import { writeFileSync } from 'node:fs';
import { room, sharedFiles, textOf } from './definition/shared-files.ts';

function refuse(stale: readonly string[]): void {
  if (stale.length === 0) return;
  const list = stale.join(', ');
  process.stderr.write(
    `Out of step with the wire tables: ${list}.\nRun: npx tsx firmware-protocol/generate.ts\n`,
  );
  process.exitCode = 1;
}

const files = sharedFiles();
const stale = [...files].filter(([path, content]) => textOf(path) !== content).map(([path]) => path);
if (process.argv.includes('--check')) refuse(stale);
else for (const path of stale) writeFileSync(room(path), files.get(path) ?? '');
