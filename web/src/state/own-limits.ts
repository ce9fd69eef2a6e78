// SPDX-License-Identifier: MIT
// The limits of a part's results as its page lists them: the one that holds, the default beside it where a person set
// their own, and reading of such an own limit as typed. It asks the checks and the core; it decides nothing.
import type { Check } from '#checks/check';
import { checks } from '#checks/index';
import { overridables } from '#checks/override-troubles';
import { overrideSchema, overrideTrouble, type Override } from '#core/limits/override';
import type { Car } from '#core/parts/part';
import type { RigDescription } from '#core/samples/rig-description';
import type { Limit } from '#core/verdicts/limit';
import { limitOrigin, type LimitOrigin } from './limit-origin.ts';
import { shownUnit } from './figures.ts';
import { fieldUnit, typedBound } from './typed-bound.ts';

export interface ResultLimit {
  /** "motor-no-load/kv". */
  readonly key: string;
  readonly title: string;
  readonly check: string;
  readonly unit: string;
  /** Of the limit, in the result's unit: it picks the unit beside the form's fields. */
  readonly size: number;
  /** Unit beside the form's fields. */
  readonly shown: string;
  /** Null: the result only informs. */
  readonly holds: LimitOrigin | null;
  readonly kind: Limit['kind'] | null;
  /** Of the limit that holds, in the result's unit. */
  readonly bounds: Pick<Limit, 'min' | 'max'> | null;
  /** Without the person's own; null where there is none. */
  readonly usual: LimitOrigin | null;
  readonly own: Override | null;
}
export function resultLimits(ids: readonly string[], car: Car, rig: RigDescription): ResultLimit[] {
  const without = { ...car, overrides: undefined };
  return checks
    .filter(({ id }) => ids.includes(id))
    .flatMap((check) => {
      const [holds, usual] = [check.limits(car, rig), check.limits(without, rig)];
      return check.results.map((result) => resultLimit(check, result, { holds, usual, car }));
    });
}
interface Limits {
  readonly holds: Readonly<Record<string, Limit>>;
  readonly usual: Readonly<Record<string, Limit>>;
  readonly car: Car;
}
function resultLimit(
  check: Check,
  { id, title, unit }: Check['results'][number],
  { holds, usual, car }: Limits,
): ResultLimit {
  const key = `${check.id}/${id}`;
  const sizeOf = (limit: Limit | undefined) => limit?.max ?? limit?.min ?? 1;
  const size = sizeOf(usual[id] ?? holds[id]);
  const origin = (limit: Limit | undefined) => (limit ? limitOrigin(limit, sizeOf(limit)) : null);
  return {
    key,
    title,
    check: check.title,
    unit,
    size,
    shown: fieldUnit(unit, size),
    holds: origin(holds[id]),
    kind: holds[id]?.kind ?? null,
    bounds: holds[id] ?? null,
    usual: origin(usual[id]),
    own: car.overrides?.find(({ checkResultId }) => checkResultId === key) ?? null,
  };
}
export interface OwnLimitText {
  readonly min: string;
  readonly max: string;
  readonly reason: string;
}
export type OwnLimitRead =
  | { readonly ok: true; readonly override: Override }
  /** By field; what concerns none of them is under `whole`. */
  | { readonly ok: false; readonly errors: Readonly<Record<string, string>> };

export interface OwnLimitOf {
  readonly result: ResultLimit;
  readonly car: Car;
  readonly rig: RigDescription;
  /** ISO 8601, the day. */
  readonly today: string;
}
export function readOwnLimit(
  text: OwnLimitText,
  { result, car, rig, today: date }: OwnLimitOf,
): OwnLimitRead {
  const { key, unit, shown } = result;
  const errors: Record<string, string> = {};
  const bounds: Record<string, number> = {};
  for (const side of ['min', 'max'] as const) {
    if (text[side].trim() === '') continue;
    const typed = typedBound(text[side], unit, shown);
    if (typed.ok) bounds[side] = typed.value;
    else errors[side] = typed.words;
  }
  if (Object.keys(errors).length > 0) return { ok: false, errors };
  const read = overrideSchema.safeParse({ checkResultId: key, ...bounds, reason: text.reason, date });
  if (!read.success) return { ok: false, errors: byField(read.error.issues) };
  const trouble = overrideTrouble(read.data, overridables(car, rig));
  return trouble ? { ok: false, errors: { whole: trouble } } : { ok: true, override: read.data };
}
const byField = (issues: readonly { readonly path: readonly PropertyKey[]; readonly message: string }[]) =>
  Object.fromEntries(issues.map(({ path, message }) => [String(path[0] ?? 'whole'), message]));

/** As typed again, in the unit that stands beside the field. */
export function ownLimitText({ own, unit, size }: ResultLimit): OwnLimitText {
  const shown = shownUnit(unit, size);
  const say = (bound: number | undefined) =>
    bound === undefined ? '' : `${Number(shown.value(bound).toPrecision(9))} ${shown.unit}`;
  return { min: say(own?.min), max: say(own?.max), reason: own?.reason ?? '' };
}
const others = ({ overrides = [] }: Car, key: string) =>
  overrides.filter(({ checkResultId }) => checkResultId !== key);

export const withOverride = (car: Car, override: Override): Car => ({
  ...car,
  overrides: [...others(car, override.checkResultId), override],
});
/** The default is back. */
export const withoutOverride = (car: Car, key: string): Car => ({ ...car, overrides: others(car, key) });
