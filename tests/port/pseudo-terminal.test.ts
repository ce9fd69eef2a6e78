// SPDX-License-Identifier: MIT
// `npm run rig` on a pseudo-terminal, opened by serialport as any client would: hello, an unbroken stream, reset at
// every opening, bad usage. Time is read off the rig's own ticks; the wall clock only bounds it. Needs the Debian package socat.
import { lstatSync, writeFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { SerialPort } from 'serialport';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { encodeFrame } from '#protocol/frame';
import { FrameDecoder } from '#protocol/frame-decoder';
import { encodeMessage, isMessageFault, type Message, parseMessage } from '#protocol/messages';
import { pause, type RigProcess, startProgram, startRig, until } from './rig-fixture.ts';

let folder = '';
let path = '';
let rig: RigProcess;

type ScanBlock = Extract<Message, { type: 'scanBlock' }>;
type HelloBack = Extract<Message, { type: 'helloBack' }>;
interface Talk {
  readonly messages: Message[];
  readonly port: SerialPort;
  say(message: Message): void;
  close(): Promise<void>;
}
async function opened(): Promise<Talk> {
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
    close: () => new Promise((done) => (port.isOpen ? port.close(() => done()) : done())),
  };
}
/** Which terminal is at the path now. */
const line = (): string => {
  const link = lstatSync(path, { throwIfNoEntry: false, bigint: true });
  return link ? `${link.ino} ${link.ctimeNs}` : '';
};
let lastLine = '';
/**
 * Open, with the hello answered. Each client gets a terminal of its own, made when the last one's close was seen; a
 * close can't be seen once somebody opened the same terminal again, so the next client waits for the fresh one.
 */
async function openTalk(id: number): Promise<Talk & { readonly answer: HelloBack }> {
  await until(() => line() !== '' && line() !== lastLine, 20_000, 'a fresh terminal');
  lastLine = line();
  const talk = await opened();
  const answer = await hello(talk, id);
  if (!answer) throw new Error('the virtual rig did not answer');
  return { ...talk, answer };
}
async function hello(talk: Talk, id: number): Promise<HelloBack | undefined> {
  const answer = () => talk.messages.find((m): m is HelloBack => m.type === 'helloBack' && m.id === id);
  for (let tries = 0; tries < 500 && talk.port.isOpen && !answer(); tries++) {
    if (tries % 5 === 0) talk.say({ type: 'hello', id, major: 1, minor: 0 });
    await pause(20);
  }
  return answer();
}

describe('virtual rig on a pseudo-terminal', () => {
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'bench-marshal-'));
    path = join(folder, 'rig');
    rig = await startRig(path, '--seed', '3');
  });
  afterAll(async () => {
    await rig.end();
    await rm(folder, { recursive: true, force: true });
  });

  it('answers hello', async () => {
    const talk = await openTalk(1);
    expect(talk.answer.major).toBe(1);
    await talk.close();
  });

  it('streams without a gap, never faster than the wall clock', async () => {
    const talk = await openTalk(2);
    talk.say({ type: 'stream', id: 3, on: 1 });
    const blocks = () => talk.messages.filter((m): m is ScanBlock => m.type === 'scanBlock');
    await until(() => blocks().length > 0, 5000, 'the first block');
    const fromMs = performance.now();
    const before = blocks().length;
    await pause(3000);
    const wallS = (performance.now() - fromMs) / 1e3;
    const seen = blocks().slice(before - 1);
    await talk.close();
    // A block is 8 scans of 1872 ticks of 0.5 us, 7.488 ms of rig time.
    const steps = seen.slice(1).map((block, i) => block.tick - seen[i].tick);
    expect([...new Set(steps)]).toEqual([8 * 1872]);
    const rigS = (seen.at(-1)!.tick - seen[0].tick) * 0.5e-6;
    // Slower is allowed on a busy computer; faster only by the resonator's 0.5 % and the 20 ms that may be made good.
    expect(rigS / wallS).toBeGreaterThan(0.2);
    expect(rigS).toBeLessThan(wallS * 1.005 + 0.05);
  });

  it('says that opening reset it, and starts anew', async () => {
    const first = await openTalk(4);
    first.say({ type: 'stream', id: 5, on: 1 });
    await until(() => first.messages.some((m) => m.type === 'scanBlock'), 5000, 'the first block');
    await first.close();
    const closedMs = performance.now();
    const again = await openTalk(6);
    const sinceS = (performance.now() - closedMs) / 1e3;
    expect(again.answer.resetCause).toBe(2);
    // Its ticks of 0.5 us count from the opening.
    expect(again.answer.tick * 0.5e-6).toBeLessThan(sinceS * 1.005 + 0.05);
    await pause(200);
    expect(again.messages.some((m) => m.type === 'scanBlock')).toBe(false);
    await again.close();
  });
});

describe('bad usage of npm run rig', () => {
  const run = async (...words: string[]) => {
    const child = startProgram('bench-sim/harness/rig.ts', ...words);
    let text = '';
    child.stderr!.on('data', (chunk: Buffer) => (text += chunk));
    const code = await new Promise((done) => child.on('close', done));
    return { code, text };
  };

  it('ends with 2 and says why', async () => {
    const { code, text } = await run('--pty', '/tmp/x', '--fault', 'gremlins=1');
    expect(code).toBe(2);
    expect(text).toMatch(/no fault "gremlins"/);
  });

  it('does not overwrite a file', async () => {
    const file = join(await mkdtemp(join(tmpdir(), 'bench-marshal-')), 'notes');
    writeFileSync(file, 'mine');
    const { code, text } = await run('--pty', file);
    expect(code).toBe(5);
    expect(text).toMatch(/exists and is no pseudo-terminal/);
  });
});
