// SPDX-License-Identifier: MIT
// Build step: compiles the service worker beside the page and writes into it which files the page consists of.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import type { Plugin } from 'vite';

const worker = 'service-worker.js';

function filesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name !== worker)
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)))
    .toSorted();
}
function versionOf(folder: string, files: readonly string[]): string {
  const hash = createHash('sha256');
  for (const file of files) hash.update(file).update(readFileSync(join(folder, file)));
  return hash.digest('hex').slice(0, 12);
}
/** The page itself is asked for by its folder, never as index.html. */
const address = (file: string) => (file === 'index.html' ? './' : `./${file}`);

function writeList(folder: string): void {
  const files = filesIn(folder);
  const list = { version: versionOf(folder, files), files: files.map(address) };
  const path = join(folder, worker);
  writeFileSync(path, `const builtFiles=${JSON.stringify(list)};\n${readFileSync(path, 'utf8')}`);
}
export function precache(): Plugin {
  return {
    name: 'precache',
    apply: 'build',
    buildStart() {
      const id = join(import.meta.dirname, 'service-worker.ts');
      this.emitFile({ type: 'chunk', id, fileName: worker });
    },
    writeBundle: { order: 'post', sequential: true, handler: ({ dir }) => writeList(dir!) },
  };
}
