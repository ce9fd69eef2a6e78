// SPDX-License-Identifier: MIT
// A growing first-in first-out queue of bytes. It knows no line and no frame.

export class ByteRing {
  length = 0;
  private bytes: Uint8Array;
  private head = 0;

  constructor(capacity: number) {
    this.bytes = new Uint8Array(capacity);
  }

  push(more: Uint8Array): void {
    while (this.length + more.length > this.bytes.length) this.grow();
    for (const byte of more) this.bytes[(this.head + this.length++) % this.bytes.length] = byte;
  }

  /** Takes the oldest byte; -1 when there is none. */
  shift(): number {
    if (this.length === 0) return -1;
    const byte = this.bytes[this.head];
    this.head = (this.head + 1) % this.bytes.length;
    this.length--;
    return byte;
  }

  clear(): void {
    this.length = 0;
  }

  private grow(): void {
    const larger = new Uint8Array(2 * this.bytes.length);
    for (let i = 0; i < this.length; i++) larger[i] = this.bytes[(this.head + i) % this.bytes.length];
    this.bytes = larger;
    this.head = 0;
  }
}
