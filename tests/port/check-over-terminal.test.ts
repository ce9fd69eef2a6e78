// SPDX-License-Identifier: MIT
// The command line as somebody uses it, over a pseudo-terminal at real time: the verdicts of the same check in
// process; a stopped host, a busy port, an unplugged rig, a stop by hand. Needs the Debian package socat.
import type { ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { pause, type RigProcess, startProgram, startRig, until } from './rig-fixture.ts';

const folder = mkdtempSync(join(tmpdir(), 'check-'));
const children: ChildProcess[] = [];
const ends: (() => Promise<void>)[] = [];

async function rigAt(name: string, ...words: string[]): Promise<RigProcess> {
  const rig = await startRig(join(folder, name), '--seed', '1', ...words);
  ends.push(rig.end);
  return rig;
}
interface Running {
  readonly child: ChildProcess;
  /** What it told so far of its progress. */
  told(): string;
  readonly ended: Promise<{ readonly code: number | null; readonly out: string }>;
}
function check(...words: string[]): Running {
  const child = startProgram('bench-sim/harness/check.ts', 'run', ...words);
  children.push(child);
  const said = { out: '', errors: '' };
  child.stdout!.on('data', (chunk: Buffer) => (said.out += chunk));
  child.stderr!.on('data', (chunk: Buffer) => (said.errors += chunk));
  const ended = new Promise<number | null>((done) => child.once('close', done));
  return { child, told: () => said.errors, ended: ended.then((code) => ({ code, out: said.out })) };
}
const overTerminal = ({ path, scene }: RigProcess, name: string, ...more: string[]): Running =>
  check(name, '--rig', path, '--seed', '1', '--scene', scene, ...more);
const inProcess = (name: string): Running => check(name, '--rig', 'virtual', '--seed', '1', '--json');
/** The feed is on, the run goes on, nothing moves. */
const underWay = (run: Running): Promise<void> =>
  until(() => run.told().includes('Load steps'), 60_000, 'load steps of the run');

interface Told {
  readonly verdict: string;
  readonly ending: string;
  readonly reason?: string;
  readonly results: readonly { id: string; verdict: string; value: number; interval: [number, number] }[];
}
const read = ({ out }: { out: string }): Told => JSON.parse(out);

afterAll(async () => {
  for (const child of children) child.kill('SIGKILL');
  await Promise.all(ends.map((end) => end()));
  rmSync(folder, { recursive: true, force: true });
});

describe('a check over a pseudo-terminal', () => {
  // All at once: each waits most of its time for the rig, which takes real time for what it does.
  it.concurrent.each(['motor-no-load', 'servo-stall', 'rail-sag'])(
    '%s gives the verdicts that it gives in process',
    async (name) => {
      const place = await rigAt(name);
      const [far, near] = await Promise.all([
        overTerminal(place, name, '--json').ended,
        inProcess(name).ended,
      ]);
      await place.end();
      expect(read(far)).toMatchObject({ ending: 'done', verdict: read(near).verdict });
      expect(far.code).toBe(near.code);
      const verdicts = ({ results }: Told) => results.map(({ id, verdict }) => `${id}: ${verdict}`);
      expect(verdicts(read(far))).toEqual(verdicts(read(near)));
      // The same car, measured in two runs: the intervals at 95 % must meet.
      for (const [index, { id, interval }] of read(near).results.entries()) {
        const [low, high] = read(far).results[index].interval;
        expect(low, id).toBeLessThanOrEqual(interval[1]);
        expect(high, id).toBeGreaterThanOrEqual(interval[0]);
      }
    },
  );
});

describe('a run that is disturbed', () => {
  it.concurrent('waits for a host that stalls for a second, and trips on one that fell silent', async () => {
    const place = await rigAt('stalled');
    const run = overTerminal(place, 'rail-sag');
    await underWay(run);
    const stall = async (ms: number): Promise<void> => {
      run.child.kill('SIGSTOP');
      await pause(ms);
      run.child.kill('SIGCONT');
    };
    await stall(1000);
    const before = run.told().length;
    await until(() => run.told().length > before, 20_000, 'the next step of the run');
    expect(run.child.exitCode).toBe(null);
    await stall(4000);
    const { code, out } = await run.ended;
    expect(out).toContain('The host fell silent.');
    expect(code).toBe(4);
  });
  it.concurrent('keeps the port from others, and ends safe on an interrupt', async () => {
    const place = await rigAt('busy');
    const first = overTerminal(place, 'rail-sag');
    await underWay(first);
    const second = await overTerminal(place, 'rail-sag', '--json').ended;
    expect(second.code).toBe(5);
    expect(JSON.parse(second.out).error).toEqual({
      code: 'portBusy',
      message: `The device ${place.path} is in use. Close the other program or page that uses the port, and connect again.`,
    });
    first.child.kill('SIGINT');
    const { code, out } = await first.ended;
    expect(code).toBe(4);
    expect(out).toMatch(/stopped/i);
    expect(out).toMatch(/not measured/i);
  });
  it.concurrent('says exactly what a lost link means when the rig goes away', async () => {
    const place = await rigAt('lost');
    const run = overTerminal(place, 'rail-sag');
    await underWay(run);
    await place.end();
    const { code, out } = await run.ended;
    expect(code).toBe(5);
    expect(out).toContain('Link lost. The state of the rig is unknown: disconnect the pack.');
  });
});
