// SPDX-License-Identifier: MIT
// The five things a way to a rig must be able to do. It carries bytes; it does not know frames,
// messages or rigs. Web Serial, Node serialport, the virtual rig and replayed records implement it.

/** A two-way stream of bytes to one rig. Implementations throw `RigError` (rig-error.ts) and nothing else. */
export interface ByteLink {
  /** Opens the line. Opening resets a real board. Rejects with RigError 'noRig', 'portBusy' or 'linkLost'. */
  open(): Promise<void>;
  /** Closes the line; safe to call twice, never rejects. */
  close(): Promise<void>;
  /** Queues bytes in order. Rejects with RigError 'linkLost' when the line is gone. */
  send(bytes: Uint8Array): Promise<void>;
  /** Sets the one receiver of bytes. Chunks have any size. */
  onBytes(receive: (bytes: Uint8Array) => void): void;
  /** Sets the one listener for a line that went away by itself; not called after close(). */
  onLost(listener: (cause: unknown) => void): void;
}
