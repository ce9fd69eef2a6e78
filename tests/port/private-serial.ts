// SPDX-License-Identifier: MIT
// Starts the private namespaces of private-serial.sh and offers: plug a pseudo-terminal in as a USB serial
// adapter, unplug it, run a program inside, launch an unmodified Chromium inside.
import { spawn, type ChildProcess } from 'node:child_process';
import { chmodSync, existsSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface, type Interface } from 'node:readline';
import { chromium, type Browser } from 'playwright-core';

export const chromiumFlags = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Why the Web Serial test can't run here, or null when it can. */
export function missingForPrivateSerial(): string | null {
  const onPath = (name: string) =>
    (process.env.PATH ?? '').split(':').some((folder) => existsSync(join(folder, name)));
  if (process.getuid?.() !== 0) return 'root is needed for private namespaces';
  if (!existsSync('/sys/class/tty/ttyS0')) return 'this computer has no ttyS0 to stand in for a USB adapter';
  const absent = ['unshare', 'nsenter', 'ip', 'python3', 'socat', 'chromium'].filter((name) => !onPath(name));
  return absent.length > 0 ? `not installed: ${absent.join(', ')}` : null;
}

export class PrivateSerial {
  private constructor(
    private readonly holder: ChildProcess,
    private readonly lines: Interface,
    readonly folder: string,
    private readonly pid: string,
  ) {}

  static async start(origin: string): Promise<PrivateSerial> {
    const folder = mkdtempSync(join(tmpdir(), 'private-serial-'));
    const script = join(import.meta.dirname, 'private-serial.sh');
    const holder = spawn('bash', [script, folder, origin], { stdio: ['pipe', 'pipe', 'inherit'] });
    const lines = createInterface({ input: holder.stdout! });
    const first = await nextLine(lines);
    return new PrivateSerial(holder, lines, folder, first.split(' ')[1]);
  }
  plug(pty: string): Promise<string> {
    return this.command(`plug ${pty}`);
  }
  unplug(): Promise<string> {
    return this.command('unplug');
  }
  private command(words: string): Promise<string> {
    const answer = nextLine(this.lines);
    this.holder.stdin!.write(`${words}\n`);
    return answer;
  }
  /** Runs a program inside the namespaces. */
  run(program: string, args: readonly string[], env: Record<string, string> = {}): ChildProcess {
    return spawn('nsenter', ['-t', this.pid, '-m', '-n', program, ...args], {
      stdio: ['ignore', 'pipe', 'inherit'],
      env: { ...process.env, ...env },
    });
  }
  launchChromium(): Promise<Browser> {
    const wrapper = join(this.folder, 'chromium.sh');
    writeFileSync(wrapper, `#!/bin/sh\nexec nsenter -t ${this.pid} -m -n /usr/bin/chromium "$@"\n`);
    chmodSync(wrapper, 0o755);
    return chromium.launch({ executablePath: wrapper, args: chromiumFlags });
  }
  stop(): void {
    this.lines.close();
    this.holder.stdin!.end();
    this.holder.kill();
  }
}

function nextLine(lines: Interface): Promise<string> {
  return new Promise((resolve, reject) => {
    lines.once('line', resolve);
    lines.once('close', () => reject(new Error('the private namespaces ended')));
  });
}
