// SPDX-License-Identifier: MIT
// The ways to a rig: the virtual one in its own worker, or a board over USB. Remembers the last one and takes it
// up again by itself. It knows nothing of what a rig says.
import type { Faults } from '#sim/faults/faults';
import type { Meter } from '#core/calibration/meter';
import type { Car } from '#core/parts/part';
import type { CalibrationAsk } from '../worker/calibration-messages.ts';
import type { Bench } from './bench.svelte.ts';

interface Memory {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
}
export type MeterPlace = Extract<CalibrationAsk, { kind: 'read' }>['place'];
/** The virtual rig's worker, seen from the page. */
export interface VirtualRig {
  /** Starts it anew; the port speaks bytes. */
  open(
    seed: number,
    faults: Faults,
    speed: number,
    store?: Uint8Array,
  ): Promise<{ readonly port: MessagePort; readonly car: Car }>;
  person(act: string): Promise<number | undefined>;
  meter(meter: Meter | null): void;
  readMeter(place: MeterPlace): Promise<number | null>;
  exportStore(): Promise<Uint8Array>;
  unplug(): void;
  close(): void;
}
/** What the window's Web Serial can do, or null where the browser has none. */
export interface SerialDoor {
  /** Asks the person for a port; null when they chose none. */
  request(): Promise<{ readonly vendor?: number; readonly product?: number } | null>;
  /** Whether a port the person once allowed is plugged in. */
  present(vendor?: number, product?: number): Promise<boolean>;
  onPlugged(act: () => void): void;
}
export interface Remembered {
  readonly way: 'virtual' | 'serial';
  readonly vendor?: number;
  readonly product?: number;
}

export class RigWays {
  #remembered = $state.raw<Remembered | null>(null);
  #seed = $state(7);
  #faults = $state.raw<Faults>({});
  #virtual: VirtualRig | null = null;

  constructor(
    private readonly bench: Bench,
    private readonly memory: Memory,
    private readonly makeVirtual: () => Promise<VirtualRig>,
    private readonly serial: SerialDoor | null,
    private readonly speed: number,
    private readonly onCar: (car: Car) => void,
  ) {
    this.#remembered = readRemembered(memory);
    this.#seed = Number(memory.getItem('seed') ?? 7);
    serial?.onPlugged(() => void this.reconnect());
  }
  get remembered(): Remembered | null {
    return this.#remembered;
  }
  get canSerial(): boolean {
    return this.serial !== null;
  }
  get seed(): number {
    return this.#seed;
  }
  get faults(): Faults {
    return this.#faults;
  }
  /** Takes up the remembered rig if it is there; quiet when it is not. */
  async reconnect(): Promise<void> {
    const kept = this.#remembered;
    if (!kept || this.bench.connected || this.bench.phase === 'opening') return;
    if (kept.way === 'virtual') return this.openVirtual();
    if (await this.serial?.present(kept.vendor, kept.product)) this.#openSerial(kept);
  }
  async openVirtual(): Promise<void> {
    try {
      this.#virtual ??= await this.makeVirtual();
      const { port, car } = await this.#virtual.open(
        this.#seed,
        this.#faults,
        this.speed,
        keptBytes(this.memory.getItem(this.#memoryKey)),
      );
      this.onCar(car);
      this.bench.tell({ kind: 'openVirtual' }, [port]);
      this.#remember({ way: 'virtual' });
    } catch (cause) {
      this.bench.report(
        `The virtual rig did not start: ${cause instanceof Error ? cause.message : String(cause)}`,
      );
    }
  }
  async openSerial(): Promise<void> {
    const chosen = await this.serial?.request();
    if (chosen) this.#openSerial({ way: 'serial', ...chosen });
  }
  /** A new seed is another car and another rig: it starts anew. */
  async reseed(seed: number): Promise<void> {
    this.#seed = seed;
    this.memory.setItem('seed', String(seed));
    await this.openVirtual();
  }
  /** Faults are in the car from its first moment: the virtual rig starts anew with them. */
  async setFaults(faults: Faults): Promise<void> {
    this.#faults = faults;
    if (this.#virtual) await this.openVirtual();
  }
  /** Nobody is at a virtual bench where the rig is real. */
  person(act: string): Promise<number | undefined> {
    return this.#virtual?.person(act) ?? Promise.resolve(undefined);
  }
  /** The virtual person's meter; nothing to do where the rig is real. */
  takeMeter(meter: Meter | null): void {
    this.#virtual?.meter(meter);
  }
  /** Null where the rig is real, or the meter can't show what is there. */
  readMeter(place: MeterPlace): Promise<number | null> {
    return this.#virtual?.readMeter(place) ?? Promise.resolve(null);
  }
  /** A real rig keeps its calibration itself; the virtual one's memory is kept here, by its seed. */
  async keepMemory(): Promise<void> {
    const bytes = await this.#virtual?.exportStore();
    if (bytes) this.memory.setItem(this.#memoryKey, btoa(String.fromCharCode(...bytes)));
  }
  get #memoryKey(): string {
    return `memory of virtual rig ${this.#seed}`;
  }
  /** To see what a lost link looks like. */
  pullCable(): void {
    this.#virtual?.unplug();
  }
  leave(): void {
    this.bench.close();
    this.#virtual?.close();
    this.#virtual = null;
    this.#remembered = null;
    this.memory.removeItem('rig');
  }
  #openSerial(kept: Remembered): void {
    this.#virtual?.close();
    this.#virtual = null;
    this.bench.tell({ kind: 'openSerial', vendor: kept.vendor, product: kept.product });
    this.#remember(kept);
  }
  #remember(kept: Remembered): void {
    this.#remembered = kept;
    this.memory.setItem('rig', JSON.stringify(kept));
  }
}
/** Undefined, a blank rig, where nothing is kept or it is damaged. */
function keptBytes(kept: string | null): Uint8Array | undefined {
  try {
    return kept === null ? undefined : Uint8Array.from(atob(kept), (letter) => letter.charCodeAt(0));
  } catch {
    return undefined;
  }
}
function readRemembered(memory: Memory): Remembered | null {
  try {
    const kept = JSON.parse(memory.getItem('rig') ?? 'null') as Remembered | null;
    return kept?.way === 'virtual' || kept?.way === 'serial' ? kept : null;
  } catch {
    return null;
  }
}
