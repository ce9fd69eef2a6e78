// SPDX-License-Identifier: MIT
// The committed test programs are what their sources give with avr-gcc.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const folder = join(import.meta.dirname, 'fixtures');

it('every test program is built from the source beside it', () => {
  const out = mkdtempSync(join(tmpdir(), 'bench-marshal-'));
  execFileSync('sh', [join(folder, 'build.sh'), out]);
  const names = readdirSync(folder).filter((name) => name.endsWith('.c'));
  expect(names.length).toBeGreaterThan(10);
  for (const name of names) {
    const hex = name.replace(/\.c$/, '.hex');
    expect(readFileSync(join(out, hex), 'utf8'), hex).toBe(readFileSync(join(folder, hex), 'utf8'));
  }
  rmSync(out, { recursive: true });
});
