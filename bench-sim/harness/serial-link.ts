// SPDX-License-Identifier: MIT
// A serial device as a ByteLink: 8 data bits, no parity, one stop bit, no flow control. It knows the words in which
// an operating system refuses a port; it knows no frames.
import { SerialPort } from 'serialport';
import type { ByteLink } from '#session/byte-link';
import { RigError } from '#session/rig-error';

export class SerialLink implements ByteLink {
  private readonly port: SerialPort;
  private receive: (bytes: Uint8Array) => void = () => {};
  private lost: (cause: unknown) => void = () => {};
  private closing = false;

  constructor(
    private readonly path: string,
    baudRate: number,
  ) {
    this.port = new SerialPort({ path, baudRate, autoOpen: false });
    this.port.on('data', (bytes: Buffer) => this.receive(bytes));
    this.port.on('close', (cause: unknown) => this.gone(cause));
    this.port.on('error', (cause: unknown) => this.gone(cause));
  }
  async open(): Promise<void> {
    this.closing = false;
    await new Promise<void>((done, failed) =>
      this.port.open((error) => (error ? failed(refusal(this.path, error)) : done())),
    );
    await new Promise<void>((done) => this.port.flush(() => done()));
  }
  async close(): Promise<void> {
    this.closing = true;
    if (!this.port.isOpen) return;
    await new Promise<void>((done) => this.port.close(() => done()));
  }
  send(bytes: Uint8Array): Promise<void> {
    if (!this.port.isOpen) return Promise.reject(new RigError('linkLost'));
    return new Promise((done, failed) =>
      this.port.write(bytes, (cause) => (cause ? failed(new RigError('linkLost', '', { cause })) : done())),
    );
  }
  onBytes(receive: (bytes: Uint8Array) => void): void {
    this.receive = receive;
  }
  onLost(listener: (cause: unknown) => void): void {
    this.lost = listener;
  }
  private gone(cause: unknown): void {
    if (this.closing) return;
    this.closing = true;
    this.lost(cause);
  }
}
/** After the words of the system's errors (errno(3)); the port's library passes them on as text. */
function refusal(path: string, cause: Error): RigError {
  const { message } = cause;
  if (/no such (file|device)|ENOENT|not found/i.test(message))
    return new RigError('noRig', `There is no device ${path}.`, { cause });
  if (/permission denied|EACCES|access denied/i.test(message))
    return new RigError(
      'noRig',
      `You are not allowed to use ${path}: add yourself to the group that owns it (often "dialout").`,
      { cause },
    );
  if (/busy|lock|temporarily unavailable|EBUSY|EAGAIN/i.test(message))
    return new RigError('portBusy', `The device ${path} is in use.`, { cause });
  return new RigError('noRig', `${path} can't be opened as a serial device (${message}).`, { cause });
}
