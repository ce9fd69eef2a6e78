// SPDX-License-Identifier: MIT
// One run as it is kept: everything a verdict was made from, raw counts and all, so that it can be made again
// from the file alone. Schema version 1. It holds data; reading and recomputing stand beside it.
import { z } from 'zod';
import { meterSchema } from '../calibration/meter.ts';
import { carSchema } from '../parts/part.ts';
import { descriptorSchema, storeSchema } from '../samples/rig-description.ts';
import { limitSchema } from '../verdicts/limit.ts';
import { packedSchema } from './packed-columns.ts';

export const recordFormat = 'bench run record';
export const recordVersion = 1;

/** Infinity has no JSON form: endless degrees of freedom are kept as null. */
const dof = z.union([z.number(), z.null().transform(() => Number.POSITIVE_INFINITY)]);
const budgetLine = z.object({
  source: z.string(),
  u: z.number(),
  shape: z.enum(['normal', 'rectangular', 'student']),
  dof,
  origin: z.string(),
});
const stretch = z.object({ fromS: z.number(), toS: z.number(), taps: z.array(z.string()) });
const named = {
  id: z.string(),
  title: z.string(),
  unit: z.string(),
  /** Missing also in records of before it was told. */
  level: z.string().optional(),
};
export const findingSchema = z.discriminatedUnion('measured', [
  z.object({
    measured: z.literal(true),
    ...named,
    condition: z.string().optional(),
    value: z.number(),
    u: z.number(),
    interval: z.tuple([z.number(), z.number()]),
    budget: z.array(budgetLine),
    evidence: z.array(stretch),
    formula: z.string(),
    notes: z.array(z.string()),
  }),
  z.object({ measured: z.literal(false), ...named, reason: z.string() }),
]);
export { limitSchema };
const judgedSchema = z.object({
  id: z.string(),
  limit: limitSchema.optional(),
  verdict: z.enum(['pass', 'fail', 'undecided', 'not measured']),
  note: z.string().optional(),
});
/** What only a virtual rig can tell: results at their true values. */
export const virtualSchema = z.object({
  seed: z.number(),
  faults: z.record(z.string(), z.number()),
  truth: z.record(z.string(), z.number()),
});
export const recordSchema = z.object({
  format: z.literal(recordFormat),
  version: z.literal(recordVersion),
  id: z.string().min(1),
  check: z.string().min(1),
  /** ISO 8601, the computer's clock. */
  startedAt: z.string(),
  /** How the run ended: done, or why not, in words. */
  ending: z.object({
    kind: z.enum(['done', 'stopped', 'tripped', 'link lost', 'failed']),
    words: z.string(),
  }),
  software: z.object({ tool: z.string(), firmware: z.string() }),
  car: carSchema,
  rig: z.object({
    descriptor: descriptorSchema,
    store: storeSchema.nullable(),
    /** Number by which its runs belong together, where its own store is not the place for it: a virtual rig's seed. */
    serial: z.string().optional(),
  }),
  /** The hand-held meter a person has, where they told: what a calibration would bring is told for it. */
  meter: meterSchema.optional(),
  clock: z.object({ ratio: z.number(), halfWidth: z.number(), origin: z.enum(['descriptor', 'fit']) }),
  raw: packedSchema,
  marks: z.array(z.object({ atS: z.number(), label: z.string() })),
  events: z.array(z.object({ atS: z.number(), kind: z.string(), words: z.string() })),
  /** What the check's procedure noted (bursts in it); null when it never came to its end. */
  evidence: z.unknown(),
  findings: z.array(findingSchema),
  judged: z.array(judgedSchema),
  verdict: z.enum(['pass', 'fail', 'undecided', 'not measured']),
  /** Present when the rig was virtual. */
  virtual: virtualSchema.optional(),
});
export type RunRecord = z.infer<typeof recordSchema>;
/** '' for a rig that has no number. */
export const rigSerialOf = ({ rig }: Pick<RunRecord, 'rig'>): string => rig.serial ?? rig.store?.serial ?? '';
