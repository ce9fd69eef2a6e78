// SPDX-License-Identifier: MIT
// The plans of the car on the shelf: which one leads, what each has come to, kept in the browser's memory per car after
// every item. A run that ends joins the leading plan. It picks no order and judges nothing; checks/plans does.
import { z } from 'zod';
import type { WiringStep } from '#checks/check';
import { plans } from '#checks/plans/index';
import { checkOutcome, lookOutcome, skippedOutcome, type LookAnswer } from '#checks/plans/outcomes';
import type { Checks } from '#checks/plans/order';
import type { LookItem, Plan } from '#checks/plans/plan';
import {
  emptyRecord,
  planRecordSchema,
  withOutcome,
  type PlanOutcome,
  type PlanRecord,
} from '#checks/plans/plan-record';
import { wiringFor, wiringMade } from '#checks/plans/progress';
import type { CarRef } from '#core/parts/identity';
import type { Bench } from './bench.svelte.ts';
import { planView, type PlanView } from './plan-view.ts';
import type { EndedRun } from './run.svelte.ts';
import type { Shelf } from './shelf.svelte.ts';

interface Memory {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}
export interface PlanTools {
  readonly bench: Pick<Bench, 'check' | 'rig'>;
  readonly shelf: Pick<Shelf, 'car' | 'content'>;
  readonly memory: Memory;
  readonly now: () => number;
}
const ofCarSchema = z.object({
  /** Id of the plan that runs join; null where none is led through. */
  leading: z.string().nullable(),
  records: z.record(z.string(), planRecordSchema),
});
type OfCar = z.infer<typeof ofCarSchema>;
const none: OfCar = { leading: null, records: {} };
const place = 'plans';

export class Plans {
  /** By the car's identity. */
  #all = $state.raw<Readonly<Record<string, OfCar>>>({});

  constructor(private readonly tools: PlanTools) {
    this.#all = byIdentity(kept(tools.memory), tools.shelf.content.cars);
  }
  /** A check as plans know it, from its card. */
  readonly checks: Checks = (id) => {
    const card = this.tools.bench.check(id);
    return card && { ...card, needs: { taps: card.taps, outputs: card.outputs } };
  };
  get views(): readonly PlanView[] {
    return plans.map((plan) => this.view(plan));
  }
  view(plan: Plan): PlanView {
    const record = this.#ofCar().records[plan.id] ?? null;
    return planView(plan, record, this.checks, this.tools.bench.rig?.description ?? null);
  }
  /** The plan that runs join. */
  get leading(): Plan | null {
    const { leading } = this.#ofCar();
    return plans.find(({ id }) => id === leading) ?? null;
  }
  /** The plan that a run of this check would join: it comes next there, or was cut short or left out before. */
  askingFor(check: string): Plan | null {
    const plan = this.leading;
    if (!plan) return null;
    const { items, next } = this.view(plan);
    const wanted = items.some(
      ({ key, over, outcome }) => key === check && !over && (key === next?.key || outcome !== null),
    );
    return wanted ? plan : null;
  }
  /** What is to be plugged for this check that the leading plan has not plugged yet; null where no plan asks for it. */
  newWiring(check: string): readonly WiringStep[] | null {
    const plan = this.askingFor(check);
    const known = this.checks(check);
    return plan && known ? wiringFor(known, wiringMade(this.#ofCar().records[plan.id], this.checks)) : null;
  }
  start(plan: Plan): void {
    const record = emptyRecord(plan.id, this.tools.shelf.car.name, this.#stamp());
    this.#keep({ leading: plan.id, records: { ...this.#ofCar().records, [plan.id]: record } });
  }
  goOn(plan: Plan): void {
    this.#keep({ ...this.#ofCar(), leading: plan.id });
  }
  look(plan: Plan, item: LookItem, answer: LookAnswer): void {
    this.#add(this.#ofCar().records[plan.id], lookOutcome(item, answer, this.#stamp()));
  }
  leaveOut(plan: Plan, check: string): void {
    this.#add(this.#ofCar().records[plan.id], skippedOutcome(check, 'Left out by hand.', this.#stamp()));
  }
  /** A run that no plan asks for joins none. */
  ended({ check, car, runId, end, asked }: EndedRun): void {
    if (car !== this.tools.shelf.car.name) return;
    const plan = this.askingFor(check);
    const wiring = this.newWiring(check)?.length ?? 0;
    if (!plan) return;
    const outcome = checkOutcome(end, { check, runId, at: this.#stamp(), wiring, asked });
    this.#add(this.#ofCar().records[plan.id], outcome);
  }
  #add(record: PlanRecord | undefined, outcome: PlanOutcome): void {
    if (!record) return;
    const records = { ...this.#ofCar().records, [record.plan]: withOutcome(record, outcome) };
    this.#keep({ ...this.#ofCar(), records });
  }
  #ofCar(): OfCar {
    return this.#all[keyOf(this.tools.shelf.car)] ?? none;
  }
  #keep(ofCar: OfCar): void {
    this.#all = { ...this.#all, [keyOf(this.tools.shelf.car)]: ofCar };
    this.tools.memory.setItem(place, JSON.stringify(this.#all));
  }
  #stamp(): string {
    return new Date(this.tools.now()).toISOString();
  }
}
const keyOf = ({ id, name }: CarRef): string => id ?? name;
/** Plans were kept by the car's name before cars had identities. */
function byIdentity(all: Readonly<Record<string, OfCar>>, cars: readonly CarRef[]) {
  const named = cars.filter((car) => car.name in all && !(keyOf(car) in all));
  const others = Object.entries(all).filter(([key]) => !named.some(({ name }) => name === key));
  return Object.fromEntries([...others, ...named.map((car) => [keyOf(car), all[car.name]] as const)]);
}
function kept(memory: Memory): Readonly<Record<string, OfCar>> {
  try {
    return z.record(z.string(), ofCarSchema).parse(JSON.parse(memory.getItem(place) ?? '{}'));
  } catch {
    return {};
  }
}
