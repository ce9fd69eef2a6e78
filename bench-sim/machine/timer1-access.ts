// SPDX-License-Identifier: MIT
// The 16-bit registers of timer 1 seen through an 8-bit bus: one TEMP byte shared by all of them. Reading the
// low byte of counter or capture keeps the high byte; writing the low byte writes the kept high byte with it.
import type { ChipBus, ChipPart } from './chip-bus.ts';
import type { CompareTimer } from './compare-timer.ts';
import type { InputCapture } from './input-capture.ts';
import { ICR1L, OCR1AL, OCR1BL, TCNT1L } from './registers.ts';

export class Timer1Access implements ChipPart {
  private temp = 0;

  constructor(
    private readonly bus: ChipBus,
    timer: CompareTimer,
    capture: InputCapture,
  ) {
    this.readThroughTemp(TCNT1L, () => timer.clock.count(bus.now()));
    this.readThroughTemp(ICR1L, () => capture.captured);
    this.readDirect(OCR1AL, () => timer.readCompare(0));
    this.readDirect(OCR1BL, () => timer.readCompare(1));
    this.write(TCNT1L, (value) => timer.writeCount(value));
    this.write(OCR1AL, (value) => timer.writeCompare(0, value));
    this.write(OCR1BL, (value) => timer.writeCompare(1, value));
    // In normal and CTC(A) mode the capture register can't be written.
    this.write(ICR1L, () => undefined);
  }

  reset(): void {
    this.temp = 0;
  }

  private readThroughTemp(low: number, read: () => number): void {
    this.bus.readHooks[low] = () => {
      const value = read();
      this.temp = value >> 8;
      return value & 0xff;
    };
    this.bus.readHooks[low + 1] = () => this.temp;
  }

  private readDirect(low: number, read: () => number): void {
    this.bus.readHooks[low] = () => read() & 0xff;
    this.bus.readHooks[low + 1] = () => read() >> 8;
  }

  private write(low: number, store: (value: number) => void): void {
    this.bus.writeHooks[low + 1] = (value) => {
      this.temp = value;
      return true;
    };
    this.bus.writeHooks[low] = (value) => {
      store((this.temp << 8) | value);
      return true;
    };
  }
}
