// SPDX-License-Identifier: MIT
// `npm run rig` as a process for a test: on a pseudo-terminal with a scene socket, ready when it returns. Each in a
// session of its own, so that it may go before whatever else keeps this computer busy.
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';

export const top = join(import.meta.dirname, '../..');
export const pause = (ms: number) => new Promise<void>((done) => setTimeout(done, ms));

export async function until(seen: () => boolean | Promise<boolean>, ms: number, what: string): Promise<void> {
  const endMs = performance.now() + ms;
  while (!(await seen())) {
    if (performance.now() > endMs) throw new Error(`not within ${ms / 1000} s: ${what}`);
    await pause(20);
  }
}
export function startProgram(main: string, ...words: string[]): ChildProcess {
  return spawn(process.execPath, ['--import', 'tsx', join(top, main), ...words], {
    cwd: top,
    detached: true,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
}
export interface RigProcess {
  readonly path: string;
  readonly scene: string;
  readonly child: ChildProcess;
  /** The terminal goes, as a plug that is pulled; resolves when it is gone. */
  end(): Promise<void>;
}
export async function startRig(path: string, ...words: string[]): Promise<RigProcess> {
  const scene = `${path}.scene`;
  const child = startProgram('bench-sim/harness/rig.ts', '--pty', path, '--scene', scene, ...words);
  let said = '';
  child.stdout!.on('data', (chunk: Buffer) => (said += chunk));
  child.stderr!.on('data', (chunk: Buffer) => (said += chunk));
  const ended = new Promise<void>((done) => child.once('exit', () => done()));
  await until(() => said.includes('ready') && existsSync(scene), 30_000, 'a virtual rig that is ready');
  const end = () => {
    child.kill();
    return ended;
  };
  return { path, scene, child, end };
}
