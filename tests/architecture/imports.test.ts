// SPDX-License-Identifier: MIT
// The direction of imports, as a table. A violation prints the file, what it imports, and the rule.
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
/** Room of a file: the first prefix that fits. */
const rooms: readonly (readonly [string, string])[] = [
  ['firmware-protocol/', 'protocol'],
  ['web/src/core/', 'core'],
  ['web/src/checks/', 'checks'],
  ['web/src/session/', 'session'],
  ['web/src/adapters/', 'adapters'],
  ['web/src/worker/', 'worker'],
  ['web/src/state/', 'state'],
  ['web/src/ui/', 'ui'],
  ['web/', 'main'],
  ['bench-sim/physics/', 'physics'],
  ['bench-sim/machine/', 'machine'],
  ['bench-sim/wiring/', 'wiring'],
  ['bench-sim/faults/', 'faults'],
  ['bench-sim/replay/', 'replay'],
  ['bench-sim/harness/', 'harness'],
  ['bench-sim/', 'rig'],
  ['tests/', 'tests'],
];
/** Which rooms a room may import, besides itself. */
const allowed: Readonly<Record<string, readonly string[]>> = {
  protocol: [],
  core: ['protocol'],
  checks: ['protocol', 'core'],
  session: ['protocol', 'core', 'checks'],
  adapters: ['session', 'faults'],
  worker: ['protocol', 'core', 'checks', 'session', 'adapters', 'faults', 'rig'],
  state: ['core', 'checks', 'session', 'worker', 'adapters', 'faults'],
  ui: ['state', 'core', 'checks', 'faults'],
  main: ['state', 'ui', 'worker', 'adapters'],
  faults: [],
  machine: ['rig', 'faults'],
  physics: ['rig', 'wiring', 'faults', 'core'],
  wiring: ['rig', 'machine', 'faults'],
  rig: ['machine', 'physics', 'wiring', 'faults', 'session', 'core', 'protocol'],
  replay: ['rig', 'machine', 'wiring', 'core'],
  harness: [
    'protocol',
    'core',
    'checks',
    'session',
    'rig',
    'physics',
    'machine',
    'wiring',
    'faults',
    'replay',
  ],
};
/** Names that would tie the shared rooms to a screen, a port, a wall clock or chance. */
const foreign: Readonly<Record<string, RegExp>> = {
  core: /\b(document|window|navigator|localStorage|Date\.now|performance\.now|Math\.random|console)\b|from 'node:/,
  checks:
    /\b(document|window|navigator|localStorage|Date\.now|performance\.now|Math\.random|console)\b|from 'node:/,
  session:
    /\b(document|window|navigator|localStorage|Date\.now|performance\.now|Math\.random|console|setTimeout|setInterval)\b|from 'node:/,
  physics: /\b(Date\.now|Math\.random|console)\b|from 'node:/,
  machine: /\b(Date\.now|Math\.random|console)\b|from 'node:/,
};
const aliases: Readonly<Record<string, string>> = {
  '#protocol/': 'firmware-protocol/ts/',
  '#core/': 'web/src/core/',
  '#checks/': 'web/src/checks/',
  '#session/': 'web/src/session/',
  '#sim/': 'bench-sim/',
};

function sources(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return ['dist', 'node_modules'].includes(name) ? [] : sources(path);
    return /\.(ts|svelte)$/.test(name) && !name.endsWith('.test.ts') ? [path] : [];
  });
}
const roomOf = (path: string) => rooms.find(([prefix]) => path.startsWith(prefix))?.[1] ?? 'tests';
const bare = (text: string) => text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/.*$/gm, '');
function target(file: string, specifier: string): string | null {
  const alias = Object.keys(aliases).find((prefix) => specifier.startsWith(prefix));
  if (alias) return aliases[alias] + specifier.slice(alias.length);
  if (!specifier.startsWith('.')) return null;
  return relative(root, resolve(dirname(join(root, file)), specifier));
}
const files = ['web', 'firmware-protocol', 'bench-sim'].flatMap((top) =>
  sources(join(root, top)).map((path) => relative(root, path)),
);
function imports(file: string): string[] {
  const text = bare(readFileSync(join(root, file), 'utf8'));
  return [...text.matchAll(/(?:from\s+|import\s*\(\s*|import\s+|new URL\(\s*)'([^']+)'/g)].map(
    (match) => match[1],
  );
}
function violations(file: string): string[] {
  const room = roomOf(file);
  return imports(file).flatMap((specifier) => {
    const path = target(file, specifier);
    const to = path && roomOf(path);
    if (!to || to === room || (allowed[room] ?? []).includes(to)) return [];
    return [
      `${file} (${room}) imports ${specifier} (${to}); ${room} may import: ${allowed[room]?.join(', ') || 'nothing'}`,
    ];
  });
}

describe('the direction of imports', () => {
  it('sees the rooms it rules', () => {
    const seen = new Set(files.map(roomOf));
    for (const room of ['protocol', 'core', 'checks', 'session']) expect(seen).toContain(room);
  });
  it('is kept by every source file', () => {
    expect(files.flatMap(violations)).toEqual([]);
  });
  it('keeps screens, ports, wall clocks and chance out of the shared rooms', () => {
    const found = files.flatMap((file) => {
      const match = foreign[roomOf(file)]?.exec(bare(readFileSync(join(root, file), 'utf8')));
      return match ? [`${file} uses ${match[0]}`] : [];
    });
    expect(found).toEqual([]);
  });
  it('keeps uPlot to the chart folder', () => {
    const users = files.filter((file) => imports(file).some((name) => name.startsWith('uplot')));
    expect(users.filter((file) => !file.startsWith('web/src/ui/chart/'))).toEqual([]);
  });
  it('keeps AVR registers out of the firmware logic', () => {
    const logic = join(root, 'firmware-protocol/firmware/logic');
    const text = readdirSync(logic).map((name) => [name, readFileSync(join(logic, name), 'utf8')] as const);
    expect(text.filter(([, code]) => /#include\s*<avr\//.test(code)).map(([name]) => name)).toEqual([]);
  });
});
