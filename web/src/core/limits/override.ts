// SPDX-License-Identifier: MIT
// A person's own limit for one result of one car or part: what, within which bounds, why, since when. It is data
// of the car and goes with it into every record. It knows no check: which results there are is handed in.
import { z } from 'zod';

const resultKey = z.string().regex(/^[a-z0-9-]+\/[a-z0-9-]+$/, {
  error: 'name the result as check/result, such as "servo-stall/stall-current"',
});
const bound = (side: string) =>
  z
    .number({ error: `${side}: a number is needed, in the unit of the result; leave it out for no bound` })
    .min(0, `${side} cannot be below 0: no result of a check is`);
const leastReason = 8;

export const overrideSchema = z
  .strictObject(
    {
      checkResultId: resultKey,
      min: bound('the lower bound').optional(),
      max: bound('the upper bound').positive('an upper bound of 0 would fail every part').optional(),
      reason: z
        .string({ error: 'say why in a few words; the reason is shown beside every verdict it makes' })
        .trim()
        .min(leastReason, `say why in at least ${leastReason} letters; it is shown beside every verdict`)
        .max(200, 'keep the reason under 200 letters'),
      date: z.iso.date({ error: 'the date as year-month-day, such as 2026-11-25' }),
    },
    { error: (issue) => (issue.code === 'unrecognized_keys' ? unknownWords(issue.keys) : undefined) },
  )
  .refine(({ min, max }) => min !== undefined || max !== undefined, {
    error: 'give a lower bound, an upper bound, or both; to have the default back, remove the override',
  })
  .refine(({ min, max }) => min === undefined || max === undefined || min < max, {
    error: 'the lower bound must lie below the upper one: are they swapped?',
  });
export type Override = Readonly<z.infer<typeof overrideSchema>>;

export const overridesSchema = z.array(overrideSchema).superRefine((list, context) => {
  list.forEach(({ checkResultId }, i) => {
    if (list.findIndex((other) => other.checkResultId === checkResultId) < i)
      context.addIssue({
        code: 'custom',
        path: [i],
        message: `there are two overrides of ${checkResultId}: remove one`,
      });
  });
});
const unknownWords = (keys: readonly string[]): string =>
  `there is no such field: ${keys.join(', ')}; an override has checkResultId, min, max, reason, date`;

/** A result an override may be of: its key, its unit, the bounds it has without the override. */
export interface Overridable {
  readonly key: string;
  readonly unit: string;
  readonly min?: number;
  readonly max?: number;
}
/** Farther than this from the default, an override looks like a slip of the unit (mA for A, mohm for ohm). */
const slipFactor = 30;

/** What is wrong with an override in view of the results there are; null when nothing is. */
export function overrideTrouble(override: Override, known: readonly Overridable[]): string | null {
  const of = known.find(({ key }) => key === override.checkResultId);
  if (!of)
    return `No check has a result "${override.checkResultId}". There are: ${known.map(({ key }) => key).join(', ')}.`;
  return slip('lower', override.min, of.min, of.unit) ?? slip('upper', override.max, of.max, of.unit);
}
function slip(side: string, given: number | undefined, usual: number | undefined, unit: string) {
  if (!given || !usual) return null;
  const ratio = given / usual;
  if (ratio < slipFactor && ratio > 1 / slipFactor) return null;
  return `The ${side} bound ${given} ${unit} is more than ${slipFactor} times ${ratio > 1 ? 'above' : 'below'} the default of ${Number(usual.toPrecision(3))} ${unit}. Bounds are in ${unit}: is it a slip of the unit?`;
}
