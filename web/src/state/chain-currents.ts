// SPDX-License-Identifier: MIT
// What each wire of the chain carries, A: now, from the rig's taps, or at race load; null where nobody knows.
import { SteadyCurrent } from './chain-drawing.ts';
import type { Live } from './chain-view.ts';
import type { RaceWire } from './race-load.ts';

export interface ChainCurrents {
  readonly packA: number | null;
  readonly phasesA: number | null;
  readonly railA: number | null;
  readonly servoA: number | null;
}
const none = 0.02;

/** A tap that never spoke is of no rig, so nothing flows; one that fell silent tells nothing any more. The motor's
 *  current is the pack's over a duty that no tap tells; the servo has what the load bank leaves of the rail's. */
export function liveCurrents(live: Live): ChainCurrents {
  const of = (tap: string): number | null => {
    const told = live(tap);
    return told === null ? 0 : told.fresh ? told.value : null;
  };
  const [packA, railA] = [of('packCurrentNarrow'), of('railCurrent')];
  return { packA, phasesA: nothingOf(packA), railA, servoA: nothingOf(railA) };
}
const nothingOf = (wholeA: number | null): number | null =>
  wholeA !== null && Math.abs(wholeA) < none ? 0 : null;

/** Fully open, the controller hands the pack's current to two phases at a time. */
export function raceCurrents(wires: readonly RaceWire[]): ChainCurrents {
  const of = (id: string) => wires.find(({ place }) => place === id)?.currentA?.value ?? null;
  return { packA: of('leads'), phasesA: of('leads'), railA: of('rail'), servoA: of('rail') };
}
/** The currents as drawn: each holds until it has moved by a fifth. */
export class SteadyCurrents {
  private readonly each = {
    packA: new SteadyCurrent(),
    phasesA: new SteadyCurrent(),
    railA: new SteadyCurrent(),
    servoA: new SteadyCurrent(),
  };
  next({ packA, phasesA, railA, servoA }: ChainCurrents): ChainCurrents {
    return {
      packA: this.each.packA.next(packA),
      phasesA: this.each.phasesA.next(phasesA),
      railA: this.each.railA.next(railA),
      servoA: this.each.servoA.next(servoA),
    };
  }
}
