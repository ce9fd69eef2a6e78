// SPDX-License-Identifier: MIT
// Servos with a known cause and what the checks found of them: what the diagnosis is learnt from and tried on. The
// schema guards the file; one row a servo, features in the order of `featureIds`.
import { z } from 'zod';
import { causeIds, type CauseId } from './causes.ts';
import { featureIds, type Features } from './features.ts';

const rowSchema = z.tuple([
  z.int(),
  z.enum(causeIds),
  z.number(),
  z.array(z.number().nullable()).length(featureIds.length),
]);
export const casesSchema = z.object({
  date: z.string(),
  command: z.string(),
  columns: z.array(z.enum(featureIds)).length(featureIds.length),
  /** Seed, cause, severity, features. */
  cases: z.array(rowSchema),
});
export type CasesFile = z.infer<typeof casesSchema>;
export interface KnownCase {
  readonly seed: number;
  readonly cause: CauseId;
  readonly severity: number;
  readonly features: Features;
}
const rounded = (value: number | undefined): number | null =>
  value === undefined ? null : Number(value.toFixed(4));

export function casesFile(cases: readonly KnownCase[], told: { date: string; command: string }): CasesFile {
  return {
    ...told,
    columns: [...featureIds],
    cases: cases.map(({ seed, cause, severity, features }) => [
      seed,
      cause,
      Number(severity.toFixed(3)),
      featureIds.map((id) => rounded(features[id])),
    ]),
  };
}
/** Throws ZodError on a file of another form. */
export function casesIn(file: unknown): KnownCase[] {
  return casesSchema.parse(file).cases.map(([seed, cause, severity, values]) => ({
    seed,
    cause,
    severity,
    features: Object.fromEntries(
      featureIds.flatMap((id, k) => {
        const value = values[k];
        return value === null ? [] : [[id, value] as const];
      }),
    ),
  }));
}
