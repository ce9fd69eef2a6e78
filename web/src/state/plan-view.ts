// SPDX-License-Identifier: MIT
// A plan as its screens show it: items in order with what became of each, what comes next, what this rig can't do and
// why, the sentence at the end. Order, wiring and summary are those of checks/plans. Pure.
import type { WiringStep } from '#checks/check';
import { itemSeconds, orderedItems, type Checks } from '#checks/plans/order';
import { skippedOutcome } from '#checks/plans/outcomes';
import { keyOf, type Plan, type PlanItem } from '#checks/plans/plan';
import { withOutcome, type PlanOutcome, type PlanRecord } from '#checks/plans/plan-record';
import { itemsLeft, secondsLeft, skipReason, wiringFor, wiringMade } from '#checks/plans/progress';
import { planSummary, type PlanSummary } from '#checks/plans/summary';
import type { RigDescription } from '#core/samples/rig-description';

export interface ItemView {
  readonly key: string;
  readonly item: PlanItem;
  readonly title: string;
  readonly outcome: PlanOutcome | null;
  /** Came to its end; what was cut short or left out is still to do. */
  readonly over: boolean;
  /** Why the connected rig can't do it. */
  readonly cannot: string | null;
  /** Seconds of rig and person with the wiring made so far. */
  readonly seconds: number;
  readonly wiring: readonly WiringStep[];
  /** What failed that should come before it. */
  readonly heldBy: string | null;
}
export interface PlanView {
  readonly plan: Plan;
  readonly begun: boolean;
  readonly items: readonly ItemView[];
  readonly over: number;
  readonly leftS: number;
  /** Null once nothing is left that was not tried and that this rig can do. */
  readonly next: ItemView | null;
  /** Begun and nothing next. */
  readonly summary: PlanSummary | null;
}
/** `rig` is null while none is connected: then nothing is known to be missing. */
export function planView(
  plan: Plan,
  record: PlanRecord | null,
  checks: Checks,
  rig: RigDescription | null,
): PlanView {
  const held = record ?? { outcomes: [] };
  const left = new Set(itemsLeft(plan, held, checks).map(keyOf));
  const items = orderedItems(plan, checks).map((item) =>
    itemView(item, { outcomes: held.outcomes, left, checks, rig }),
  );
  const next = record ? (items.find(isNext) ?? null) : null;
  return {
    plan,
    begun: record !== null,
    items,
    over: items.filter(({ over }) => over).length,
    leftS: secondsLeft(plan, held, checks),
    next,
    summary: record && !next ? planSummary(plan, withCannot(record, items), titleIn(items)) : null,
  };
}
interface Known {
  readonly outcomes: readonly PlanOutcome[];
  readonly left: ReadonlySet<string>;
  readonly checks: Checks;
  readonly rig: RigDescription | null;
}
function itemView(item: PlanItem, { outcomes, left, checks, rig }: Known): ItemView {
  const key = keyOf(item);
  const check = item.kind === 'check' ? checks(item.check) : undefined;
  const made = wiringMade({ outcomes: [...outcomes] }, checks);
  const failed = (item.after ?? []).find((before) =>
    outcomes.some((each) => each.key === before && each.verdict === 'fail'),
  );
  return {
    key,
    item,
    title: item.kind === 'look' ? item.words : (check?.title ?? key),
    outcome: outcomes.find((each) => each.key === key) ?? null,
    over: !left.has(key),
    cannot: item.kind === 'check' && rig ? skipReason(item, rig, checks) : null,
    seconds: itemSeconds(item, made, checks),
    wiring: check ? wiringFor(check, made) : [],
    heldBy: outcomes.find((each) => each.key === failed)?.words ?? null,
  };
}
/** A run stopped by hand or by a lost link is taken up again; one that tripped, failed or was left out waits. */
function isNext({ over, cannot, outcome }: ItemView): boolean {
  const resumed = outcome?.ending === 'stopped' || outcome?.ending === 'link lost';
  return !over && cannot === null && (outcome === null || resumed);
}
/** What the rig can't do counts as skipped for as long as that rig is connected. */
function withCannot(record: PlanRecord, items: readonly ItemView[]): PlanRecord {
  const skipped = items.filter(({ over, cannot }) => !over && cannot !== null);
  return skipped.reduce(
    (sum, { key, cannot }) => withOutcome(sum, skippedOutcome(key, cannot!, record.startedAt)),
    record,
  );
}
/** A look is named by its sentence already, which its outcome repeats. */
const titleIn = (items: readonly ItemView[]) => (key: string) => {
  const found = items.find((each) => each.key === key);
  return found?.item.kind === 'check' ? found.title : 'seen by eye';
};
