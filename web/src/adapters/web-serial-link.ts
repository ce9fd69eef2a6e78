// SPDX-License-Identifier: MIT
// The way to a board over Web Serial, used in a worker: a port the person has allowed, opened at the rig's rate,
// read until it is gone. After a loss the browser hands out a new port object, so each opening looks again.
import type { ByteLink } from '#session/byte-link';
import { RigError } from '#session/rig-error';

export interface SerialWish {
  readonly vendor?: number;
  readonly product?: number;
}
/** Room for 1.3 s of stream, should this worker be held up. */
const bufferSize = 65536;

export class WebSerialLink implements ByteLink {
  private port: SerialPort | null = null;
  private reader: ReadableStreamDefaultReader<Uint8Array> | null = null;
  private reading: Promise<void> = Promise.resolve();
  private sending: Promise<void> = Promise.resolve();
  private closing = false;
  private receive: (bytes: Uint8Array) => void = () => {};
  private lost: (cause: unknown) => void = () => {};

  constructor(
    private readonly serial: Serial,
    private readonly wish: SerialWish,
    private readonly baudRate: number,
  ) {}
  async open(): Promise<void> {
    const port = await this.find();
    try {
      await port.open({ baudRate: this.baudRate, bufferSize });
    } catch (cause) {
      throw new RigError('portBusy', 'The port of the rig could not be opened.', { cause });
    }
    this.port = port;
    this.closing = false;
    this.reading = this.read(port);
  }
  async close(): Promise<void> {
    this.closing = true;
    await this.reader?.cancel().catch(() => {});
    await this.reading;
    await this.sending.catch(() => {});
    await this.port?.close().catch(() => {});
    this.port = null;
  }
  /** Bytes go out in order; a line that is gone rejects. */
  send(bytes: Uint8Array): Promise<void> {
    this.sending = this.sending.then(() => this.write(bytes));
    const sent = this.sending;
    this.sending = sent.catch(() => {});
    return sent;
  }
  onBytes(receive: (bytes: Uint8Array) => void): void {
    this.receive = receive;
  }
  onLost(listener: (cause: unknown) => void): void {
    this.lost = listener;
  }
  private async find(): Promise<SerialPort> {
    const ports = await this.serial.getPorts();
    const { vendor, product } = this.wish;
    const fits = (port: SerialPort) => {
      const { usbVendorId, usbProductId } = port.getInfo();
      return vendor === undefined || (usbVendorId === vendor && usbProductId === product);
    };
    const port = ports.find(fits);
    if (!port) throw new RigError('noRig', 'No rig that you allowed is plugged in.');
    return port;
  }
  private async write(bytes: Uint8Array): Promise<void> {
    const writer = this.port?.writable?.getWriter();
    if (!writer) throw new RigError('linkLost');
    try {
      await writer.write(bytes);
    } catch (cause) {
      throw new RigError('linkLost', '', { cause });
    } finally {
      writer.releaseLock();
    }
  }
  /** A framing or overrun error leaves a fresh stream behind; only when there is none is the line gone. */
  private async read(port: SerialPort): Promise<void> {
    let cause: unknown = null;
    while (port.readable && !this.closing) {
      this.reader = port.readable.getReader();
      try {
        for (;;) {
          const { value, done } = await this.reader.read();
          if (done) break;
          this.receive(value);
        }
      } catch (thrown) {
        cause = thrown;
      } finally {
        this.reader.releaseLock();
        this.reader = null;
      }
    }
    if (this.closing) return;
    await port.close().catch(() => {});
    this.port = null;
    this.lost(cause);
  }
}
