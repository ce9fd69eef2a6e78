// SPDX-License-Identifier: MIT
// The virtual rig's worker, seen from the page: started with a seed, faults and speed, it gives the port of its
// line, which goes on to the bench worker. It sees no bytes.
import type { Car } from '#core/parts/part';
import type { Faults } from '#sim/faults/faults';
import { fromRigWorkerSchema, type ToRigWorker } from '#sim/rig-messages';

export interface OpenedRig {
  readonly port: MessagePort;
  readonly car: Car;
}
export class VirtualRigWorker {
  private readonly worker = new Worker(new URL('../../../bench-sim/rig-worker.ts', import.meta.url), {
    type: 'module',
  });

  /** Builds the rig anew. Rejects with what the worker said when it could not. */
  open(seed: number, faults: Faults, speed: number): Promise<OpenedRig> {
    const answered = new Promise<OpenedRig>((resolve, reject) => {
      this.worker.onmessage = ({ data, ports }) => {
        const message = fromRigWorkerSchema.parse(data);
        if (message.kind === 'failed') reject(new Error(message.words));
        else resolve({ port: ports[0], car: message.car });
      };
      this.worker.onerror = (event) => reject(new Error(event.message));
    });
    this.tell({ kind: 'open', seed, faults, speed });
    return answered;
  }
  person(act: string): void {
    this.tell({ kind: 'person', act });
  }
  /** As if the cable were pulled. */
  unplug(): void {
    this.tell({ kind: 'unplug' });
  }
  close(): void {
    this.worker.terminate();
  }
  private tell(message: ToRigWorker): void {
    this.worker.postMessage(message);
  }
}
