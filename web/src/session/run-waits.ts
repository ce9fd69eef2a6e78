// SPDX-License-Identifier: MIT
// Everything a run waits for: looked at with each block of the stream, broken off at once by a stop, a trip or a
// lost link. The first reason wins. It knows no rig.
import type { RunStopped } from './run-stopped.ts';

interface Wait {
  readonly seen: () => boolean;
  readonly done: () => void;
  readonly broken: (reason: RunStopped) => void;
}
export class RunWaits {
  private readonly waits = new Set<Wait>();
  private reason: RunStopped | null = null;
  private readonly breakers = new Set<(reason: RunStopped) => void>();

  get broken(): RunStopped | null {
    return this.reason;
  }
  /** Resolves once `seen` holds. */
  until(seen: () => boolean): Promise<void> {
    if (this.reason) return Promise.reject(this.reason);
    if (seen()) return Promise.resolve();
    return new Promise((done, broken) => this.waits.add({ seen, done, broken }));
  }
  /** A promise of somebody else, left as soon as the run breaks off. */
  guard<T>(work: () => Promise<T>): Promise<T> {
    if (this.reason) return Promise.reject(this.reason);
    return new Promise<T>((resolve, reject) => {
      this.breakers.add(reject);
      work()
        .then(
          (value) => (this.reason ? reject(this.reason) : resolve(value)),
          (error: unknown) => reject(this.reason ?? error),
        )
        .finally(() => this.breakers.delete(reject));
    });
  }
  /** Looks at every wait; called with each block. */
  look(): void {
    for (const wait of this.waits)
      if (wait.seen()) {
        this.waits.delete(wait);
        wait.done();
      }
  }
  break(reason: RunStopped): void {
    if (this.reason) return;
    this.reason = reason;
    for (const { broken } of this.waits) broken(reason);
    for (const breaker of this.breakers) breaker(reason);
    this.waits.clear();
  }
}
