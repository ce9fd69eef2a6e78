// SPDX-License-Identifier: MIT
// The bench worker, seen from the page. It is fetched when something needs it: a first visitor who reads has no use
// for it. What only keeps a bench going says nothing to one that has not begun.
import type { ToBench } from './messages.ts';

const keepsGoing: readonly ToBench['kind'][] = ['tick', 'hidden', 'stop', 'close'];

export class BenchWorkerPort {
  private worker: Worker | null = null;
  private receive: (message: unknown) => void = () => {};

  post(message: ToBench, transfer: Transferable[] = []): void {
    if (!keepsGoing.includes(message.kind)) this.wake();
    this.worker?.postMessage(message, transfer);
  }
  listen(receive: (message: unknown) => void): void {
    this.receive = receive;
  }
  wake(): void {
    if (this.worker) return;
    this.worker = new Worker(new URL('./bench-worker.ts', import.meta.url), { type: 'module' });
    this.worker.addEventListener('message', (event) => this.receive(event.data));
    this.worker.postMessage({ kind: 'hidden', hidden: document.hidden } satisfies ToBench);
  }
}
