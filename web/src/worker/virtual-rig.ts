// SPDX-License-Identifier: MIT
// The virtual rig's worker, seen from the page: started with a seed, faults, speed and what it keeps, it gives the port
// of its line, which goes on to the bench worker; its person acts and reads a meter. It sees no bytes of the line.
import type { Meter } from '#core/calibration/meter';
import type { Car } from '#core/parts/part';
import type { Faults } from '#sim/faults/faults';
import { fromRigWorkerSchema, type FromRigWorker, type ToRigWorker } from '#sim/rig-messages';
import type { MeteredPlace } from '#sim/virtual-meter';

export interface OpenedRig {
  readonly port: MessagePort;
  readonly car: Car;
}
export class VirtualRigWorker {
  private readonly worker = new Worker(new URL('../../../bench-sim/rig-worker.ts', import.meta.url), {
    type: 'module',
  });

  /** Who waits for which answer; one at a time of each kind. */
  private readonly waiting = new Map<
    FromRigWorker['kind'],
    (message: FromRigWorker, port: MessagePort) => void
  >();
  private failed: (cause: Error) => void = () => {};

  constructor() {
    this.worker.onmessage = ({ data, ports }) => {
      const message = fromRigWorkerSchema.parse(data);
      if (message.kind === 'failed') this.failed(new Error(message.words));
      else this.waiting.get(message.kind)?.(message, ports[0]);
    };
    this.worker.onerror = (event) => this.failed(new Error(event.message));
  }
  /** Builds the rig anew. Rejects with what the worker said when it could not. */
  open(seed: number, faults: Faults, speed: number, store?: Uint8Array): Promise<OpenedRig> {
    const answered = this.answer('opened', ({ car }, port) => ({ port, car }));
    this.tell({ kind: 'open', seed, faults, speed, store: store && Uint8Array.from(store) });
    return answered;
  }
  /** The person takes a meter in hand, or puts it away. */
  meter(meter: Meter | null): void {
    this.tell({ kind: 'meter', meter });
  }
  /** Null where there is nothing to read. */
  readMeter(place: MeteredPlace): Promise<number | null> {
    const answered = this.answer('metered', ({ value }) => value);
    this.tell({ kind: 'readMeter', place });
    return answered;
  }
  /** What the rig keeps in its memory. */
  exportStore(): Promise<Uint8Array> {
    const answered = this.answer('store', ({ bytes }) => bytes);
    this.tell({ kind: 'exportStore' });
    return answered;
  }
  /** The person does it; resolves with the figure that it read, if any. */
  person(act: string): Promise<number | undefined> {
    const answered = this.answer('acted', ({ figure }) => figure ?? undefined);
    this.tell({ kind: 'person', act });
    return answered;
  }
  /** As if the cable were pulled. */
  unplug(): void {
    this.tell({ kind: 'unplug' });
  }
  close(): void {
    this.worker.terminate();
  }
  private answer<Kind extends FromRigWorker['kind'], T>(
    kind: Kind,
    read: (message: Extract<FromRigWorker, { kind: Kind }>, port: MessagePort) => T,
  ): Promise<T> {
    return new Promise((resolve, reject) => {
      this.failed = reject;
      this.waiting.set(kind, (message, port) =>
        resolve(read(message as Extract<FromRigWorker, { kind: Kind }>, port)),
      );
    });
  }
  private tell(message: ToRigWorker): void {
    this.worker.postMessage(message);
  }
}
