// SPDX-License-Identifier: MIT
// Pin change interrupts of the three ports and the two external interrupts INT0, INT1 at D2, D3.
// It does not know what the levels mean.
import type { ChipBus, ChipPart } from './chip-bus.ts';
import type { Port } from './port.ts';
import { EICRA, EIFR, EIMSK, PCICR, PCIFR, PCMSK0, vectors } from './registers.ts';

/** Ports in the order of the pin change groups: B, C, D. */
export class PinInterrupts implements ChipPart {
  private changeFlags = 0;
  private externalFlags = 0;

  constructor(
    private readonly bus: ChipBus,
    private readonly ports: readonly [Port, Port, Port],
  ) {
    ports.forEach((port, group) =>
      port.listen((_level, changed, cycle) => this.pinsChanged(group, changed, cycle)),
    );
    ports[2].listen((level, changed, cycle) => this.externalChanged(level, changed, cycle));
    this.hookRegisters();
    for (let group = 0; group < 3; group++) {
      bus.interrupts.onEntry(vectors.pinChange0 + group, () => this.clearChange(1 << group));
      if (group < 2) bus.interrupts.onEntry(vectors.int0 + group, () => this.clearExternal(1 << group));
    }
  }

  reset(): void {
    this.changeFlags = this.externalFlags = 0;
  }

  private hookRegisters(): void {
    const { data, readHooks, writeHooks } = this.bus;
    readHooks[PCIFR] = () => this.changeFlags;
    readHooks[EIFR] = () => this.externalFlags;
    writeHooks[PCIFR] = (value, _old, _address, mask) => this.clearChange(value & mask);
    writeHooks[EIFR] = (value, _old, _address, mask) => this.clearExternal(value & mask);
    for (const address of [PCICR, EIMSK, EICRA]) {
      writeHooks[address] = (value) => {
        data[address] = value;
        this.update(this.bus.now());
        return true;
      };
    }
  }

  private pinsChanged(group: number, changed: number, cycle: number): void {
    if ((this.bus.data[PCMSK0 + group] & changed) === 0) return;
    this.changeFlags |= 1 << group;
    this.update(cycle);
  }

  private externalChanged(level: number, changed: number, cycle: number): void {
    for (let n = 0; n < 2; n++) {
      if ((changed & (4 << n)) === 0) continue;
      const sense = (this.bus.data[EICRA] >> (2 * n)) & 3;
      const high = (level & (4 << n)) !== 0;
      if (sense === 1 || (sense === 2 && !high) || (sense === 3 && high)) this.externalFlags |= 1 << n;
    }
    this.update(cycle);
  }

  private clearChange(bits: number): true {
    this.changeFlags &= ~bits;
    this.update(this.bus.now());
    return true;
  }

  private clearExternal(bits: number): true {
    this.externalFlags &= ~bits;
    this.update(this.bus.now());
    return true;
  }

  private update(cycle: number): void {
    const { data, interrupts } = this.bus;
    const change = this.changeFlags & data[PCICR];
    for (let group = 0; group < 3; group++) {
      interrupts.want(vectors.pinChange0 + group, (change & (1 << group)) !== 0, cycle);
    }
    for (let n = 0; n < 2; n++) {
      const low = ((data[EICRA] >> (2 * n)) & 3) === 0 && (this.ports[2].level & (4 << n)) === 0;
      const flag = low || (this.externalFlags & (1 << n)) !== 0;
      interrupts.want(vectors.int0 + n, flag && (data[EIMSK] & (1 << n)) !== 0, cycle);
    }
  }
}
