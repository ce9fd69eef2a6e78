// SPDX-License-Identifier: MIT
// The way to a virtual rig in another worker: a ByteLink over the MessagePort that its worker gave.
import type { ByteLink } from '#session/byte-link';
import { RigError } from '#session/rig-error';
import { fromRigPortSchema } from './rig-messages.ts';

export class PortLink implements ByteLink {
  private state: 'closed' | 'open' | 'lost' = 'closed';
  private receive: (bytes: Uint8Array) => void = () => undefined;
  private lost: (cause: unknown) => void = () => undefined;

  constructor(private readonly port: MessagePort) {
    port.onmessage = ({ data }) => this.arrived(data);
  }

  open(): Promise<void> {
    this.state = 'open';
    this.port.postMessage({ kind: 'open' });
    return Promise.resolve();
  }

  close(): Promise<void> {
    if (this.state !== 'closed') this.port.postMessage({ kind: 'close' });
    this.state = 'closed';
    return Promise.resolve();
  }

  send(bytes: Uint8Array): Promise<void> {
    if (this.state !== 'open') return Promise.reject(new RigError('linkLost'));
    this.port.postMessage({ kind: 'bytes', bytes });
    return Promise.resolve();
  }

  onBytes(receive: (bytes: Uint8Array) => void): void {
    this.receive = receive;
  }

  onLost(listener: (cause: unknown) => void): void {
    this.lost = listener;
  }

  private arrived(data: unknown): void {
    const message = fromRigPortSchema.parse(data);
    if (this.state !== 'open') return;
    if (message.kind === 'bytes') {
      this.receive(message.bytes);
      return;
    }
    this.state = 'lost';
    this.lost(new RigError('linkLost', message.words));
  }
}
