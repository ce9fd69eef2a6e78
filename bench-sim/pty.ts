// SPDX-License-Identifier: MIT
// A pseudo-terminal by socat, so that any serial client can open the virtual rig. A new one is made after each
// close, so nobody reads what was meant for the last one: until it is there, about 0.1 s, opening fails or gives a
// line that hangs up at once. It passes bytes and knows no rig.
import { type ChildProcessByStdio, spawn } from 'node:child_process';
import { lstatSync, rmSync } from 'node:fs';
import type { Readable, Writable } from 'node:stream';

export interface PtyListener {
  /** The line can be opened now. */
  ready(): void;
  opened(): void;
  closed(): void;
  bytes(chunk: Uint8Array): void;
  failed(error: Error): void;
}
type Socat = ChildProcessByStdio<Writable, Readable, Readable>;
/** A client that is behind by so much, 2 s of stream at least, loses what comes then, as on a real line. */
const mostUnreadBytes = 65_536;
const MISSING = 'socat is missing; it makes the pseudo-terminal. Install it: apt-get install socat';

function requireFree(path: string): void {
  const found = lstatSync(path, { throwIfNoEntry: false });
  if (found === undefined) return;
  if (!found.isSymbolicLink())
    throw new Error(`${path} exists and is no pseudo-terminal. Choose another path.`);
  rmSync(path);
}

export class Pty {
  private socat: Socat | null = null;
  private open = false;
  private ending = false;
  private log = '';

  /** Throws when the path is taken by something else. */
  constructor(
    private readonly path: string,
    private readonly listener: PtyListener,
  ) {
    requireFree(path);
    this.start();
  }

  write(bytes: Uint8Array): void {
    const { socat } = this;
    if (this.open && socat && socat.stdin.writableLength < mostUnreadBytes) socat.stdin.write(bytes);
  }

  end(): void {
    this.ending = true;
    this.socat?.kill();
    rmSync(this.path, { force: true });
  }

  private start(): void {
    const address = `PTY,link=${this.path},rawer,wait-slave,pty-interval=0.02`;
    const socat = spawn('socat', ['-d', '-d', '-t', '0.01', 'STDIO', address], {
      stdio: ['pipe', 'pipe', 'pipe'],
    });
    this.socat = socat;
    this.log = '';
    socat.on('error', (error: NodeJS.ErrnoException) =>
      this.listener.failed(error.code === 'ENOENT' ? new Error(MISSING) : error),
    );
    socat.stdin.on('error', () => undefined);
    socat.stdout.on('data', (chunk: Buffer) => this.listener.bytes(new Uint8Array(chunk)));
    socat.stderr.on('data', (chunk: Buffer) => this.told(chunk.toString()));
    socat.on('exit', () => this.exited());
  }

  /** What socat says of its own progress. */
  private told(text: string): void {
    const before = this.log;
    this.log += text;
    const first = (words: string): boolean => this.log.includes(words) && !before.includes(words);
    if (first('PTY is')) this.listener.ready();
    if (first('starting data transfer loop')) {
      this.open = true;
      this.listener.opened();
    }
  }

  private exited(): void {
    const wasOpen = this.open;
    this.open = false;
    if (this.ending) return;
    if (wasOpen) {
      this.listener.closed();
      this.start();
    } else if (this.log !== '') {
      this.listener.failed(
        new Error(`The pseudo-terminal could not be made: ${this.log.trim().split('\n').pop()}`),
      );
    }
  }
}
