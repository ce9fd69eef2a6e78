// SPDX-License-Identifier: MIT
// What a run has learnt of a part, as an offer to the car on the shelf. It pulls in every check: screens load it when
// they need it. It changes nothing.
import { checkById } from '#checks/index';
import { proposalOf, withProposal } from '#checks/proposal';
import { isOfPart, isSameCar } from '#core/parts/identity';
import { partRefOf, type Car, type PartKind } from '#core/parts/part';
import { readRecord } from '#core/record/record-reader';

export interface Offer {
  readonly words: string;
  readonly runId: string;
  /** The car with it; null where it holds it already. */
  readonly car: Car | null;
  /** Why it can't be taken over. */
  readonly trouble: string | null;
}
/** Null where the run proposes nothing, or was one of another part than the car holds now. */
export function offerOf(text: string, car: Car): Offer | null {
  const record = readRecord(text);
  const check = checkById(record.check);
  const proposal = check && proposalOf(check, record);
  if (!proposal || !isSamePart(record.car, car, proposal.part)) return null;
  const told = { words: proposal.words, runId: record.id };
  try {
    const changed = withProposal(car, proposal);
    const held = JSON.stringify(changed[proposal.part]) === JSON.stringify(car[proposal.part]);
    return { ...told, car: held ? null : changed, trouble: null };
  } catch (cause) {
    return { ...told, car: null, trouble: `It does not fit the car: ${whyNot(cause)}` };
  }
}
const isSamePart = (then: Car, now: Car, part: PartKind) =>
  isSameCar(then, now) && isOfPart(partRefOf(then, part), partRefOf(now, part));
const whyNot = (cause: unknown): string =>
  (cause as { issues?: readonly { message: string }[] }).issues?.[0]?.message ?? String(cause);
