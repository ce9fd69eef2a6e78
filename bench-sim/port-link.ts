// SPDX-License-Identifier: MIT
// The way to a virtual rig in another worker: a ByteLink over the MessagePort that its worker gave, and the rig's
// true time with it, so that the host's waits can run on that instead of the wall's.
import type { VirtualTruth } from '#core/record/virtual-truth';
import type { ByteLink } from '#session/byte-link';
import { RigError } from '#session/rig-error';
import { fromRigPortSchema } from './rig-messages.ts';

export class PortLink implements ByteLink {
  /** The rig's true time as last told, ms. */
  nowMs = 0;
  private passed: (nowMs: number) => void = () => undefined;
  private told: (truth: VirtualTruth) => void = () => undefined;
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

  /** Seed, faults and true results as they stand now; never, when its worker is gone. */
  truth(): Promise<VirtualTruth> {
    this.port.postMessage({ kind: 'askTruth' });
    return new Promise((told) => (this.told = told));
  }

  /** Called each time the rig's time moved on. */
  onTime(listener: (nowMs: number) => void): void {
    this.passed = listener;
  }

  private arrived(data: unknown): void {
    const message = fromRigPortSchema.parse(data);
    if (message.kind === 'time') {
      this.nowMs = message.nowMs;
      this.passed(message.nowMs);
      if (this.state === 'open') this.port.postMessage({ kind: 'heard', nowMs: message.nowMs });
      return;
    }
    if (message.kind === 'truth') return this.told(message.virtual);
    if (this.state !== 'open') return;
    if (message.kind === 'bytes') {
      this.receive(message.bytes);
      return;
    }
    this.state = 'lost';
    this.lost(new RigError('linkLost', message.words));
  }
}
