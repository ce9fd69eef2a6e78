// SPDX-License-Identifier: MIT
// The command line as somebody uses it: the same check in process and over a pseudo-terminal at real time gives
// the same verdict; a busy port, a device that is no rig, an unplugged rig. Needs the Debian package socat.
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';

const top = join(import.meta.dirname, '../..');
const folder = mkdtempSync(join(tmpdir(), 'check-'));
const children: ChildProcess[] = [];
const pause = (ms: number) => new Promise((done) => setTimeout(done, ms));

/** In a session of its own, so that it may go before whatever else keeps this computer busy. */
function start(main: string, ...words: string[]): ChildProcess {
  const child = spawn(process.execPath, ['--import', 'tsx', join(top, main), ...words], {
    cwd: top,
    detached: true,
  });
  children.push(child);
  return child;
}
/** A virtual rig on a terminal of its own, ready. */
async function rigAt(
  name: string,
  ...words: string[]
): Promise<{ path: string; scene: string; rig: ChildProcess }> {
  const path = join(folder, name);
  const scene = `${path}.scene`;
  const rig = start('bench-sim/harness/rig.ts', '--pty', path, '--scene', scene, '--seed', '1', ...words);
  for (let waited = 0; !existsSync(path) || !existsSync(scene); waited += 50) {
    if (waited > 20_000) throw new Error('the virtual rig did not come up');
    await pause(50);
  }
  await pause(300);
  return { path, scene, rig };
}
interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly errors: string;
}
async function check(words: readonly string[], onStart?: (child: ChildProcess) => void): Promise<Ended> {
  const child = start('bench-sim/harness/check.ts', ...words);
  let out = '';
  let errors = '';
  child.stdout!.on('data', (chunk: Buffer) => (out += chunk));
  child.stderr!.on('data', (chunk: Buffer) => (errors += chunk));
  onStart?.(child);
  const code = await new Promise<number | null>((done) => child.once('close', done));
  return { code, out, errors };
}
/** A computer so busy that beats are late is tripped by the rig, as it must be: such a run is done again. */
async function checkUnhurried(words: readonly string[]): Promise<Ended> {
  for (let attempt = 1; ; attempt++) {
    const ended = await check(words);
    const { reason } = JSON.parse(ended.out) as { reason?: string };
    if (attempt === 4 || reason !== 'The host fell silent.') return ended;
    console.warn(`attempt ${attempt}: the computer was too busy to beat in time`);
  }
}
const on = ({ path, scene }: { path: string; scene: string }, name: string) =>
  ['run', name, '--rig', path, '--seed', '1', '--scene', scene, '--json'] as const;

describe('a check over a pseudo-terminal', () => {
  afterAll(() => {
    for (const child of children) child.kill();
    rmSync(folder, { recursive: true, force: true });
  });
  it('gives the same verdicts as in process, at real time, with hands from the scene', async () => {
    const place = await rigAt('same');
    const overTerminal = await checkUnhurried(on(place, 'servo-stall'));
    const inProcess = await check(['run', 'servo-stall', '--rig', 'virtual', '--seed', '1', '--json']);
    expect([overTerminal.code, inProcess.code]).toEqual([0, 0]);
    const [far, near] = [overTerminal, inProcess].map(({ out }) => JSON.parse(out));
    expect(far.verdict).toBe(near.verdict);
    const [low, high] = near.results[0].interval as [number, number];
    expect(far.results[0].value).toBeGreaterThan(low);
    expect(far.results[0].value).toBeLessThan(high);
    place.rig.kill();
  });
  it('says that the port is in use while another program runs on it', async () => {
    const place = await rigAt('busy');
    const first = check([...on(place, 'rail-sag')]);
    await pause(4000);
    const second = await check(on(place, 'rail-sag'));
    expect(second.code).toBe(5);
    expect(JSON.parse(second.out).error.code).toBe('portBusy');
    children.at(-2)!.kill('SIGINT');
    const stopped = await first;
    expect(stopped.code).toBe(4);
    expect(JSON.parse(stopped.out)).toMatchObject({ ending: 'stopped', verdict: 'not measured' });
    place.rig.kill();
  });
  it('says exactly what a lost link means when the rig goes away in the middle', async () => {
    const place = await rigAt('lost');
    const lost = await check(on(place, 'rail-sag'), () => setTimeout(() => place.rig.kill(), 8000));
    expect(lost.code).toBe(5);
    expect(JSON.parse(lost.out)).toMatchObject({
      ending: 'link lost',
      verdict: 'not measured',
      reason: 'Link lost. The state of the rig is unknown: disconnect the pack.',
    });
  });
  it('calls a terminal that only echoes no rig', async () => {
    const path = join(folder, 'echo');
    const echo = spawn('socat', [`PTY,raw,echo=0,link=${path}`, 'EXEC:cat']);
    children.push(echo);
    for (let waited = 0; !existsSync(path) && waited < 5000; waited += 50) await pause(50);
    const refused = await check(['run', 'rail-sag', '--rig', path, '--seed', '1', '--json']);
    expect(refused.code).toBe(5);
    expect(JSON.parse(refused.out).error).toMatchObject({ code: 'notARig' });
  });
});
