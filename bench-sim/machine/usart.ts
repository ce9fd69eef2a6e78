// SPDX-License-Identifier: MIT
// The serial port of the chip: transmit shift and data register, a receive buffer of two bytes behind a shift
// register, overrun, frame error at a wrong rate, and the three interrupts. Bytes take their time on the line
// in both directions. Framing is 8 data bits, no parity, 1 stop bit; others say that they are not modelled.
import { ByteRing } from './byte-ring.ts';
import type { ChipBus, ChipPart } from './chip-bus.ts';
import { MachineFault } from './machine-fault.ts';
import { UBRR0H, UBRR0L, UCSR0A, UCSR0B, UCSR0C, UDR0, vectors } from './registers.ts';

const RXC = 0x80;
const TXC = 0x40;
const UDRE = 0x20;
const FE = 0x10;
const DOR = 0x08;
const U2X = 0x02;
const RXEN = 0x10;
const TXEN = 0x08;
const FRAME_BITS = 10;
/** Largest mismatch of rates that ten bits tolerate (about half a bit in 9.5). */
const RATE_TOLERANCE = 0.045;

export class Usart implements ChipPart {
  /** Cycles a bit of the far end takes. */
  hostBitCycles = 32;
  /** Bytes lost on the way in because the program did not read in time. */
  overruns = 0;
  onByte: (byte: number, cycle: number) => void = () => undefined;
  private readonly incoming = new ByteRing(4096);
  private readonly buffer = new Uint8Array(2);
  private readonly bufferError = new Uint8Array(2);
  private buffered = 0;
  private waiting = -1;
  private waitingError = 0;
  private overrun = false;
  private arriving = false;
  private lineFreeAt = 0;
  private sending = -1;
  private queued = -1;
  private transmitted = false;
  private readonly receiveSlot: number;
  private readonly transmitSlot: number;

  constructor(private readonly bus: ChipBus) {
    this.receiveSlot = bus.queue.slot((due) => this.receiveStep(due));
    this.transmitSlot = bus.queue.slot((due) => this.sent(due));
    this.hookRegisters();
    bus.interrupts.onEntry(vectors.usartTransmit, () => {
      this.transmitted = false;
      this.update(bus.now());
    });
  }

  /** Bytes that the far end has put on the line; they arrive one after another at its rate. */
  receive(bytes: Uint8Array): void {
    const idle = this.incoming.length === 0 && !this.arriving;
    this.incoming.push(bytes);
    if (idle && bytes.length > 0)
      this.bus.queue.set(this.receiveSlot, Math.max(this.bus.now(), this.lineFreeAt));
  }

  /** Bytes not yet at the chip. */
  get backlog(): number {
    return this.incoming.length;
  }

  /** The line itself (what the far end still sends) survives a reset of the chip. */
  reset(): void {
    this.buffered = 0;
    this.waiting = this.sending = this.queued = -1;
    this.overrun = this.transmitted = false;
    this.bus.queue.clear(this.transmitSlot);
    this.bus.data[UCSR0C] = 0x06;
    this.update(this.bus.now());
  }

  private hookRegisters(): void {
    const { readHooks, writeHooks, data } = this.bus;
    readHooks[UCSR0A] = () => this.status();
    writeHooks[UCSR0A] = (value, _old, _address, mask) => {
      if (value & mask & TXC) this.transmitted = false;
      data[UCSR0A] = value & U2X;
      this.update(this.bus.now());
      return true;
    };
    writeHooks[UCSR0B] = (value) => this.writeEnables(value);
    writeHooks[UCSR0C] = (value) => {
      if (value !== 0x06)
        throw new MachineFault(`Serial port: frame format 0x${value.toString(16)} is not modelled.`);
      data[UCSR0C] = value;
      return true;
    };
    readHooks[UDR0] = () => this.readData();
    writeHooks[UDR0] = (value) => this.writeData(value);
  }

  private status(): number {
    let status = this.bus.data[UCSR0A] & U2X;
    if (this.buffered > 0) status |= RXC | (this.bufferError[0] ? FE : 0);
    if (this.transmitted) status |= TXC;
    if (this.queued < 0) status |= UDRE;
    return this.overrun ? status | DOR : status;
  }

  private writeEnables(value: number): true {
    const { data } = this.bus;
    if (value & 4) throw new MachineFault('Serial port: nine-bit frames are not modelled.');
    data[UCSR0B] = value;
    if (!(value & RXEN)) {
      this.buffered = 0;
      this.waiting = -1;
      this.overrun = false;
    }
    this.update(this.bus.now());
    return true;
  }

  private get bitCycles(): number {
    const { data } = this.bus;
    const divisor = (data[UBRR0L] | ((data[UBRR0H] & 15) << 8)) + 1;
    return divisor * (data[UCSR0A] & U2X ? 8 : 16);
  }

  private update(cycle: number): void {
    const { data, interrupts } = this.bus;
    const enables = data[UCSR0B];
    interrupts.want(vectors.usartReceive, this.buffered > 0 && (enables & 0x80) !== 0, cycle);
    interrupts.want(vectors.usartTransmit, this.transmitted && (enables & 0x40) !== 0, cycle);
    interrupts.want(vectors.usartEmpty, this.queued < 0 && (enables & 0x20) !== 0, cycle);
  }

  private readData(): number {
    const byte = this.buffer[0];
    if (this.buffered === 0) return byte;
    this.buffer[0] = this.buffer[1];
    this.bufferError[0] = this.bufferError[1];
    this.buffered--;
    this.overrun = false;
    this.takeWaiting();
    this.update(this.bus.now());
    return byte;
  }

  private takeWaiting(): void {
    if (this.waiting < 0 || this.buffered === 2) return;
    this.buffer[this.buffered] = this.waiting;
    this.bufferError[this.buffered++] = this.waitingError;
    this.waiting = -1;
  }

  /** Alternates between the start bit of a byte and the middle of its stop bit. */
  private receiveStep(due: number): void {
    this.arriving = !this.arriving;
    if (this.arriving) this.startBit(due);
    else this.stopBit(due);
  }

  private startBit(due: number): void {
    const listening = (this.bus.data[UCSR0B] & RXEN) !== 0;
    if (listening && this.waiting >= 0) {
      this.waiting = -1;
      this.overrun = true;
      this.overruns++;
    }
    this.bus.queue.set(this.receiveSlot, due + Math.round((FRAME_BITS - 0.5) * this.hostBitCycles));
  }

  private stopBit(due: number): void {
    const byte = this.incoming.shift();
    this.lineFreeAt = due + Math.round(0.5 * this.hostBitCycles);
    if (this.bus.data[UCSR0B] & RXEN) this.accept(byte, due);
    if (this.incoming.length > 0) this.bus.queue.set(this.receiveSlot, this.lineFreeAt);
  }

  private accept(byte: number, due: number): void {
    const wrongRate = Math.abs(this.hostBitCycles / this.bitCycles - 1) > RATE_TOLERANCE;
    this.waiting = wrongRate ? byte ^ 0xa5 : byte;
    this.waitingError = wrongRate ? 1 : 0;
    this.takeWaiting();
    this.update(due);
  }

  private writeData(value: number): true {
    const now = this.bus.now();
    if (!(this.bus.data[UCSR0B] & TXEN)) return true;
    if (this.sending < 0) this.send(value, now);
    else if (this.queued < 0) this.queued = value;
    this.update(now);
    return true;
  }

  private send(byte: number, cycle: number): void {
    this.sending = byte;
    this.bus.queue.set(this.transmitSlot, cycle + FRAME_BITS * this.bitCycles);
  }

  private sent(due: number): void {
    const byte = this.sending;
    this.sending = -1;
    if (this.queued >= 0) {
      this.send(this.queued, due);
      this.queued = -1;
    } else {
      this.transmitted = true;
    }
    this.update(due);
    this.onByte(byte, due);
  }
}
