// SPDX-License-Identifier: MIT
// What a run has learnt of a part that other checks go by, offered to the person: nothing is taken over unasked.
import type { RunRecord } from '#core/record/run-record';
import type { Check } from './check.ts';
import { carSchema, type Car, type PartKind } from '#core/parts/part';

export interface Proposal {
  readonly part: PartKind;
  /** What would change, and why, in a sentence. */
  readonly words: string;
  /** Fields of the part. */
  readonly change: Readonly<Record<string, unknown>>;
}
/** What a run of this check proposes; null where it proposes nothing. */
export const proposalOf = ({ proposes }: Check, { findings, clock }: RunRecord): Proposal | null =>
  proposes?.(findings, clock) ?? null;
/** The car with the proposal taken over. Throws a ZodError where the part could not be so. */
export function withProposal(car: Car, { part, change }: Proposal): Car {
  return carSchema.parse({ ...car, [part]: { ...car[part], ...change } });
}
