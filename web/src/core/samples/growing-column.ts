// SPDX-License-Identifier: MIT
// A typed array that grows by doubling, so that a long run costs a constant per value. It knows no meaning
// of what it holds.

type Kind = Float64ArrayConstructor | Uint32ArrayConstructor | Uint16ArrayConstructor | Uint8ArrayConstructor;

export class GrowingColumn<K extends Kind> {
  private cells: InstanceType<K>;
  private used = 0;
  constructor(
    private readonly kind: K,
    room = 256,
  ) {
    this.cells = new kind(room) as InstanceType<K>;
  }
  get length(): number {
    return this.used;
  }
  push(value: number): void {
    this.makeRoom(this.used + 1);
    this.cells[this.used++] = value;
  }
  append(values: ArrayLike<number>): void {
    this.makeRoom(this.used + values.length);
    this.cells.set(values, this.used);
    this.used += values.length;
  }
  at(index: number): number {
    return this.cells[index];
  }
  /** A view, valid until the next push. */
  view(): InstanceType<K> {
    return this.cells.subarray(0, this.used) as InstanceType<K>;
  }
  private makeRoom(wanted: number): void {
    if (wanted <= this.cells.length) return;
    const larger = new this.kind(Math.max(wanted, this.cells.length * 2)) as InstanceType<K>;
    larger.set(this.cells);
    this.cells = larger;
  }
}
