// SPDX-License-Identifier: MIT
// `npm run rig` on a pseudo-terminal, opened by serialport as any client would: hello, stream at real time, reset
// at every opening, bad usage. Needs the Debian package socat.
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, writeFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { SerialPort } from 'serialport';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { encodeFrame } from '#protocol/frame';
import { FrameDecoder } from '#protocol/frame-decoder';
import { encodeMessage, isMessageFault, type Message, parseMessage } from '#protocol/messages';

const top = join(import.meta.dirname, '../..');
let folder = '';
let path = '';
let rig: ChildProcess;

function startRig(...words: string[]): ChildProcess {
  const main = join(top, 'bench-sim/harness/rig.ts');
  return spawn(process.execPath, ['--import', 'tsx', main, ...words], {
    cwd: top,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
}
const textOf = (child: ChildProcess): { text: string } => {
  const heard = { text: '' };
  for (const stream of [child.stdout!, child.stderr!])
    stream.on('data', (chunk: Buffer) => (heard.text += chunk));
  return heard;
};
const pause = (ms: number) => new Promise((done) => setTimeout(done, ms));
async function until(seen: () => boolean, ms: number): Promise<void> {
  for (let waited = 0; !seen() && waited < ms; waited += 20) await pause(20);
  if (!seen()) throw new Error('it did not happen in time');
}

interface Talk {
  readonly messages: Message[];
  readonly port: SerialPort;
  say(message: Message): void;
  close(): Promise<void>;
}
/** A fresh terminal is made after each close; who opens the old one at once finds it hung up. */
async function openTalk(): Promise<Talk> {
  await pause(500);
  await until(() => existsSync(path), 2000);
  const port = new SerialPort({ path, baudRate: 500_000, autoOpen: false });
  const decoder = new FrameDecoder();
  const messages: Message[] = [];
  port.on('data', (chunk: Buffer) => {
    for (const result of decoder.push(chunk)) {
      if (!('payload' in result)) continue;
      const message = parseMessage(result.payload);
      if (!isMessageFault(message)) messages.push(message);
    }
  });
  await new Promise<void>((done, failed) => port.open((error) => (error ? failed(error) : done())));
  return {
    messages,
    port,
    say: (message) => void port.write(encodeFrame(encodeMessage(message))),
    close: () => new Promise((done) => port.close(() => done())),
  };
}
async function hello(talk: Talk, id: number): Promise<Extract<Message, { type: 'helloBack' }>> {
  const answer = () =>
    talk.messages.find(
      (m): m is Extract<Message, { type: 'helloBack' }> => m.type === 'helloBack' && m.id === id,
    );
  for (let tries = 0; tries < 20 && !answer(); tries++) {
    talk.say({ type: 'hello', id, major: 1, minor: 0 });
    await pause(100);
  }
  return answer()!;
}

describe('virtual rig on a pseudo-terminal', () => {
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'bench-marshal-'));
    path = join(folder, 'rig');
    rig = startRig('--pty', path, '--seed', '3');
    const heard = textOf(rig);
    await until(() => heard.text.includes('ready'), 20_000);
    // Past its own power-on, so that the next reset is that of the opening.
    await pause(500);
  });
  afterAll(async () => {
    rig.kill();
    await pause(300);
    await rm(folder, { recursive: true, force: true });
  });

  it('answers hello and says that opening reset it', async () => {
    const talk = await openTalk();
    const answer = await hello(talk, 1);
    expect([answer.major, answer.resetCause]).toEqual([1, 2]);
    await talk.close();
  });

  it('streams at the pace of the wall clock and starts anew when opened again', async () => {
    const talk = await openTalk();
    await hello(talk, 2);
    talk.say({ type: 'stream', id: 3, on: 1 });
    await pause(500);
    const blocks = () => talk.messages.filter((m) => m.type === 'scanBlock');
    const from = performance.now();
    const before = blocks().length;
    await pause(3000);
    const perS = (blocks().length - before) / ((performance.now() - from) / 1e3);
    await talk.close();
    // 8 scans of 936 us a block: 133.5 a second; a loaded machine may fall behind a little.
    expect(perS).toBeGreaterThan(110);
    expect(perS).toBeLessThan(140);
    const again = await openTalk();
    const answer = await hello(again, 4);
    // Less than 3 s since its reset: 0.5 us a tick.
    expect(answer.tick).toBeLessThan(3 * 2e6);
    expect(again.messages.some((m) => m.type === 'scanBlock')).toBe(false);
    await again.close();
  });
});

describe('bad usage of npm run rig', () => {
  const run = async (...words: string[]) => {
    const child = startRig(...words);
    const heard = textOf(child);
    const code = await new Promise((done) => child.on('exit', done));
    return { code, text: heard.text };
  };
  it.each([
    [[], /Give --pty PATH/],
    [['--pty', '/tmp/x', '--seed', 'many'], /whole number/],
    [['--pty', '/tmp/x', '--fault', 'gremlins=1'], /no fault "gremlins"/],
    [['--pty', '/tmp/x', '--fault', 'soft-rail=3'], /from 0 to 1/],
    [['--port', '/tmp/x'], /--port/],
  ])('%j ends with 2 and says why', async (words, reason) => {
    const { code, text } = await run(...words);
    expect(code).toBe(2);
    expect(text).toMatch(reason);
  });

  it('does not overwrite a file', async () => {
    const file = join(await mkdtemp(join(tmpdir(), 'bench-marshal-')), 'notes');
    writeFileSync(file, 'mine');
    const { code, text } = await run('--pty', file);
    expect(code).toBe(5);
    expect(text).toMatch(/exists and is no pseudo-terminal/);
  });
});
