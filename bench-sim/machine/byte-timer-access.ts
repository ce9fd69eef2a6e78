// SPDX-License-Identifier: MIT
// Counter and compare registers of the two 8-bit timers. They follow their control register A in the data space.
import type { ChipBus } from './chip-bus.ts';
import type { CompareTimer } from './compare-timer.ts';

export function hookByteTimer(bus: ChipBus, timer: CompareTimer, controlA: number): void {
  const { readHooks, writeHooks } = bus;
  readHooks[controlA + 2] = () => timer.clock.count(bus.now());
  writeHooks[controlA + 2] = (value) => {
    timer.writeCount(value);
    return true;
  };
  for (const unit of [0, 1] as const) {
    readHooks[controlA + 3 + unit] = () => timer.readCompare(unit);
    writeHooks[controlA + 3 + unit] = (value) => {
      timer.writeCompare(unit, value);
      return true;
    };
  }
}
