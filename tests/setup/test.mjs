// SPDX-License-Identifier: MIT
// `npm test`: installs what is missing, then runs every gate in order and stops at the first that fails. Gates that
// only read and use one core each go two at a time.
// Its last line counts what ran. One gate alone: `node tests/setup/test.mjs types`.
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, existsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { providePackages, provideSystem, root } from './provide.mjs';

const system = [
  {
    probe: 'avr-gcc',
    package: 'gcc-avr',
    why: 'rebuilds the firmware and compares it with the committed hex',
  },
  { probe: '/usr/lib/avr/include/avr/io.h', package: 'avr-libc', why: 'rebuilds the firmware' },
  { probe: 'g++', package: 'g++', why: 'builds the firmware logic for this computer' },
  { probe: 'chromium', package: 'chromium', why: 'clicks through the page' },
  { probe: 'socat', package: 'socat', why: 'makes the pseudo-terminal' },
  { probe: 'ip', package: 'iproute2', why: 'private network for the Web Serial test' },
  { probe: 'python3', package: 'python3', why: 'plug and unplug events for the Web Serial test' },
];
const bin = (name) => join(root, 'node_modules', '.bin', name);
const reports = mkdtempSync(join(tmpdir(), 'bench-marshal-'));
const vitest = (project) => [
  bin('vitest'),
  [
    'run',
    '--project',
    project,
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${join(reports, project)}.json`,
  ],
];
const gates = {
  types: [bin('tsc'), ['--noEmit', '-p', '.']],
  svelte: [bin('svelte-check'), ['--tsconfig', 'tsconfig.json', '--fail-on-warnings']],
  lint: [bin('oxlint'), ['--quiet', 'web', 'firmware-protocol', 'bench-sim', 'tests']],
  format: [
    bin('prettier'),
    ['--check', '--log-level=warn', 'web', 'firmware-protocol', 'bench-sim', 'tests'],
  ],
  generated: [bin('tsx'), ['firmware-protocol/generate.ts', '--check']],
  descriptor: [bin('tsx'), ['firmware-protocol/firmware/embed-descriptor.ts', '--check']],
  firmware: ['sh', ['firmware-protocol/firmware/build.sh', '--check']],
  logic: ['sh', ['firmware-protocol/firmware/host-tests/run.sh']],
  unit: vitest('unit'),
  sim: vitest('sim'),
  build: [bin('vite'), ['build', '--logLevel=warn']],
  browser: vitest('browser'),
  port: vitest('port'),
};

const reading = ['types', 'svelte', 'lint', 'format', 'generated', 'descriptor', 'firmware', 'logic'];
const lanes = 2;

/** Standard output of a gate is printed whole when it ends. */
function run(name) {
  const [command, args] = gates[name];
  const started = Date.now();
  return new Promise((done) => {
    const gate = spawn(command, args, { cwd: root, stdio: ['ignore', 'pipe', 'inherit'] });
    const parts = [];
    gate.stdout.on('data', (part) => parts.push(part));
    gate.on('error', (cause) => parts.push(Buffer.from(`${cause.message}\n`)));
    gate.on('close', (status) => {
      const text = Buffer.concat(parts).toString('utf8');
      const seconds = ((Date.now() - started) / 1000).toFixed(0);
      process.stdout.write(
        `\n== ${name}\n${text}${name}: ${status === 0 ? 'good' : 'FAILED'}, ${seconds} s\n`,
      );
      done({ name, good: status === 0, text });
    });
  });
}
/** Runs gates some at a time; none begins after one has failed. */
async function runAll(names, atATime) {
  const left = [...names];
  const ended = [];
  const lane = async () => {
    while (left.length > 0 && ended.every(({ good }) => good)) ended.push(await run(left.shift()));
  };
  await Promise.all(Array.from({ length: atATime }, lane));
  return ended;
}

/** Tests counted in a gate: vitest's report, or the "N passed, N failed" line of the C++ tests; a plain gate is one. */
function count(name, { good, text }) {
  const file = `${join(reports, name)}.json`;
  if (existsSync(file)) {
    const report = JSON.parse(readFileSync(file, 'utf8'));
    return [
      report.numPassedTests,
      report.numFailedTests + (good || report.numFailedTests ? 0 : 1),
      report.numPendingTests,
    ];
  }
  const line = [...text.matchAll(/(\d+) passed, (\d+) failed/g)].at(-1);
  if (line) return [Number(line[1]), Number(line[2]), 0];
  return good ? [1, 0, 0] : [0, 1, 0];
}

providePackages();
const absent = provideSystem(system);
if (process.env.CI === 'true' && absent.length > 0) process.exit(1);
const named = process.argv.slice(2);
const wanted = named.length > 0 ? named : Object.keys(gates);
const unknown = wanted.filter((name) => !(name in gates));
if (unknown.length > 0) {
  process.stdout.write(
    `No gate is called ${unknown.join(', ')}. There are: ${Object.keys(gates).join(', ')}.\n`,
  );
  process.exit(2);
}
const first = await runAll(
  wanted.filter((name) => reading.includes(name)),
  lanes,
);
const rest = first.every(({ good }) => good) ? wanted.filter((name) => !reading.includes(name)) : [];
const sum = [0, 0, 0];
for (const outcome of [...first, ...(await runAll(rest, 1))])
  count(outcome.name, outcome).forEach((value, index) => (sum[index] += value));
process.stdout.write(`\n${sum[0]} passed, ${sum[1]} failed, ${sum[2]} skipped\n`);
process.exit(sum[1] === 0 ? 0 : 1);
