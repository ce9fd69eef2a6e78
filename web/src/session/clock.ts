// SPDX-License-Identifier: MIT
// What the host needs of a clock: beats, timeouts, the fit of rig time. It is passed in, so that a test
// or the in-process virtual rig owns it. Nothing in session or core reads another clock.

export interface Clock {
  /** Host time in milliseconds, monotonic, any origin. */
  now(): number;
  /** Calls `act` once after `ms`; returns a function that cancels it. */
  after(ms: number, act: () => void): () => void;
  /** Calls `act` every `ms` until the returned function is called. */
  every(ms: number, act: () => void): () => void;
}
