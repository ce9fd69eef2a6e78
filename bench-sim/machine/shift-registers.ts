// SPDX-License-Identifier: MIT
// Two chained 8-bit shift registers with output latches and an enable, fed by SPI bytes or bit by bit. They
// have no reset: after power-on they hold chance. While disabled, pull-downs make every output low.

export class ShiftRegisters {
  /** Register 1 (load bank, feed, multiplexer) as its outputs stand. */
  register1 = 0;
  /** Register 2 (selector, Hall supply, bleeder, LED, pack load) as its outputs stand. */
  register2 = 0;
  onChange: (cycle: number) => void = () => undefined;
  private chain: number;
  private latched: number;
  private enabled = false;

  /** `powerOn` is the 16-bit content after power-on. */
  constructor(powerOn: number) {
    this.chain = this.latched = powerOn & 0xffff;
  }

  shiftBit(high: boolean): void {
    this.chain = ((this.chain << 1) | (high ? 1 : 0)) & 0xffff;
  }

  shiftByte(byte: number): void {
    this.chain = ((this.chain << 8) | byte) & 0xffff;
  }

  /** Rising edge of the latch line. */
  latch(cycle: number): void {
    this.latched = this.chain;
    this.settle(cycle);
  }

  enable(on: boolean, cycle: number): void {
    this.enabled = on;
    this.settle(cycle);
  }

  private settle(cycle: number): void {
    const outputs = this.enabled ? this.latched : 0;
    const low = outputs & 0xff;
    const high = outputs >> 8;
    if (low === this.register1 && high === this.register2) return;
    this.register1 = low;
    this.register2 = high;
    this.onChange(cycle);
  }
}
