// SPDX-License-Identifier: MIT
// Three faults put into the virtual car unseen: the person finds them with the checks, marks a suspicion, and has them
// shown. It judges nothing but whether the suspicion was right.
import type { FaultName, Faults } from '#sim/faults/faults';
import type { FaultCard } from './fault-groups.ts';

export const hiddenCount = 3;
export interface Shown {
  readonly fault: FaultCard;
  readonly found: boolean;
}

export class HiddenFaults {
  #hidden = $state.raw<readonly FaultCard[]>([]);
  #known: readonly FaultCard[] = [];
  #suspected = $state.raw<ReadonlySet<FaultName>>(new Set());
  #shown = $state(false);

  /** `chance`: 0 up to but not 1. */
  constructor(
    private readonly setFaults: (faults: Faults) => Promise<void>,
    private readonly chance: () => number,
  ) {}
  /** Faults are hidden and not yet shown. */
  get searching(): boolean {
    return this.#hidden.length > 0 && !this.#shown;
  }
  get suspected(): ReadonlySet<FaultName> {
    return this.#suspected;
  }
  /** What was hidden, once shown; null before. */
  get shown(): readonly Shown[] | null {
    if (!this.#shown) return null;
    return this.#hidden.map((fault) => ({ fault, found: this.#suspected.has(fault.name) }));
  }
  /** Suspected, but not hidden in the car. */
  get sound(): readonly FaultCard[] {
    return this.#known.filter((fault) => this.#suspected.has(fault.name) && !this.#hidden.includes(fault));
  }
  /** `known`: what may be drawn. */
  async hide(known: readonly FaultCard[]): Promise<void> {
    this.#known = known;
    this.#hidden = this.#draw();
    this.#suspected = new Set();
    this.#shown = false;
    await this.setFaults(Object.fromEntries(this.#hidden.map(({ name }) => [name, 1])));
  }
  suspect(name: FaultName, on: boolean): void {
    const suspected = new Set(this.#suspected);
    if (on) suspected.add(name);
    else suspected.delete(name);
    this.#suspected = suspected;
  }
  /** The faults stay in the car, now seen. */
  show(): void {
    this.#shown = true;
  }
  /** Takes everything out of the car and begins afresh. */
  async end(): Promise<void> {
    this.#hidden = [];
    this.#suspected = new Set();
    this.#shown = false;
    await this.setFaults({});
  }
  #draw(): readonly FaultCard[] {
    const left = [...this.#known];
    return Array.from({ length: hiddenCount }, () => {
      const [drawn] = left.splice(Math.floor(this.chance() * left.length), 1);
      return drawn;
    });
  }
}
