// SPDX-License-Identifier: MIT
// The virtual rig: compiled firmware on the emulated board, wired to a plant, as a device with a byte stream.
// The cycle counter is its only clock: the same program, plant and seed give the same bytes.
import type { Faults } from './faults/faults.ts';
import { severityOf } from './faults/faults.ts';
import type { Board } from './machine/board.ts';
import type { Instruments } from './machine/instruments.ts';
import { EEPROM_BYTES } from './machine/eeprom.ts';
import { readHex } from './machine/intel-hex.ts';
import { seededRandom } from './seeded-random.ts';
import { Cable } from './wiring/cable.ts';
import type { Plant } from './wiring/plant.ts';
import type { BoardVariant, RigErrors } from './wiring/rig-errors.ts';
import type { RigWatcher } from './wiring/rig-watcher.ts';
import { RigWiring } from './wiring/rig-wiring.ts';

/** What opening the port does to the reset line: a pulse through a capacitor. */
const RESET_PULSE_S = 100e-6;
export const DEFAULT_BAUD = 500_000;

export interface VirtualRigOptions {
  /** Intel HEX text of the firmware. */
  readonly hex: string;
  readonly plant: Plant;
  readonly seed: number;
  readonly faults?: Faults;
  /** Content of the EEPROM, as `exportStore` gave it. */
  readonly store?: Uint8Array;
  readonly baud?: number;
  readonly watcher?: RigWatcher;
  /** Dividers of the board; the firmware must be built for the same. */
  readonly variant?: BoardVariant;
}
export interface VirtualRig {
  readonly cycles: number;
  /** Seconds of true time since power-on. */
  readonly nowS: number;
  /** Processor cycles in a second of true time. */
  readonly trueHz: number;
  /** What the parts of this rig truly are. */
  readonly errors: RigErrors;
  readonly instruments: Instruments;
  /** For measurements at the pins. */
  readonly board: Board;
  readonly plant: Plant;
  /** Bytes sent to the rig that have not arrived yet. */
  readonly backlog: number;
  runForMs(ms: number): void;
  runUntilCycle(cycle: number): void;
  /** Bytes that the host puts on the line; they arrive at its rate. */
  send(bytes: Uint8Array): void;
  /** The one receiver of bytes, called with each byte and the cycle at which it left. */
  onByte(receive: (byte: number, cycle: number) => void): void;
  /** As opening the port does: a pulse on the reset line. */
  reset(): void;
  /** The supply breaks down and comes back. */
  brownOut(seconds: number): void;
  /** A hand on the stop, besides the one that the rig's light asks for. */
  pressStop(open: boolean): void;
  /** The figure that the words ask for, where a person could read one. */
  person(act: string): number | undefined;
  exportStore(): Uint8Array;
}

function takeStore(content: Uint8Array, store: Uint8Array | undefined): void {
  if (store === undefined) return;
  if (store.length !== EEPROM_BYTES) {
    throw new Error(`A rig's store must be ${EEPROM_BYTES} bytes, not ${store.length}.`);
  }
  content.set(store);
}

export function createVirtualRig(options: VirtualRigOptions): VirtualRig {
  const { hex, plant, seed, faults = {}, baud = DEFAULT_BAUD } = options;
  const random = seededRandom(seed, 'rig');
  const wiring = new RigWiring(readHex(hex), plant, random, faults, options.watcher, options.variant);
  const { board, trueHz } = wiring;
  const { chip } = board;
  let receive: (byte: number, cycle: number) => void = () => undefined;
  const cable = new Cable(severityOf(faults, 'noisy-cable'), trueHz, random.stream('cable'), (byte, cycle) =>
    receive(byte, cycle),
  );
  takeStore(chip.eeprom.content, options.store);
  chip.usart.hostBitCycles = trueHz / baud;
  chip.usart.onByte = (byte, cycle) => {
    cable.disturbed = plant.inputs.feed !== 'off';
    cable.pass(byte, cycle);
  };
  return {
    get cycles() {
      return chip.cycles;
    },
    get nowS() {
      return chip.cycles / trueHz;
    },
    get backlog() {
      return chip.usart.backlog;
    },
    trueHz,
    errors: wiring.errors,
    instruments: chip.instruments,
    board,
    plant,
    runForMs: (ms) => chip.run(chip.cycles + (ms / 1e3) * trueHz),
    runUntilCycle: (cycle) => chip.run(cycle),
    send: (bytes) => chip.usart.receive(bytes),
    onByte: (listener) => {
      receive = listener;
    },
    reset: () => board.reset('external', RESET_PULSE_S),
    brownOut: (seconds) => board.reset('brownOut', seconds),
    pressStop: (open) => wiring.person.hold(open, chip.cycles),
    person: (act) => {
      options.watcher?.person(chip.cycles, act);
      return plant.person(act);
    },
    exportStore: () => chip.eeprom.content.slice(),
  };
}
