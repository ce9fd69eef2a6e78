// SPDX-License-Identifier: MIT
// What a plan is, declared as data: which checks it runs and what a person looks at. The order is worked out from
// chance, cost and time (order.ts); a plan runs nothing.
import type { PartKind } from '#core/parts/part';

interface Item {
  /** Share of cars on which this finds something; from memory. */
  readonly chance: number;
  /** What a fault found too late costs: 1 an annoyance, 10 a fire. From memory. */
  readonly cost: number;
  /** Keys of items of the same plan that must come first. */
  readonly after?: readonly string[];
}
export interface CheckItem extends Item {
  readonly kind: 'check';
  /** Id of a check, which is the item's key. */
  readonly check: string;
}
export interface LookItem extends Item {
  readonly kind: 'look';
  readonly id: string;
  readonly part: PartKind;
  /** What is looked at, as a sentence that is true when all is well. */
  readonly words: string;
  readonly seconds: number;
}
export type PlanItem = CheckItem | LookItem;
export interface Plan {
  readonly id: string;
  readonly title: string;
  readonly why: string;
  /** Rig and person together; absent where nobody counts the minutes. */
  readonly withinS?: number;
  /** What its runs together are asked at the end: why this part is as it is. */
  readonly asksWhy?: 'servo';
  readonly items: readonly PlanItem[];
}
export const keyOf = (item: PlanItem): string => (item.kind === 'check' ? item.check : item.id);
