// SPDX-License-Identifier: MIT
// What was mended on a part and when, as a person noted it: the part's history begins anew there.
import { z } from 'zod';
import { identitySchema, isOfPart } from '../parts/identity.ts';

export const repairSchema = z.object({
  partName: z.string().min(1, 'a repair needs the name of its part'),
  partId: identitySchema.optional(),
  /** Day, ISO 8601. */
  at: z.iso.date({ error: 'the day as year-month-day, such as 2026-11-25' }),
  words: z
    .string()
    .trim()
    .min(3, 'say in a few words what was done, such as "new bearings"')
    .max(60, 'keep it under 60 letters: it stands in the chart'),
});
export const repairsSchema = z.array(repairSchema);
export type KeptRepair = z.infer<typeof repairSchema>;

export interface RepairsMerge {
  readonly added: readonly KeptRepair[];
  /** Of a part and a day that has another one here: that one stays. */
  readonly differing: readonly KeptRepair[];
}
/** A part has one repair a day. */
export function arrivingRepairs(here: readonly KeptRepair[], file: readonly KeptRepair[]): RepairsMerge {
  const added: KeptRepair[] = [];
  const held = (repair: KeptRepair) => [...here, ...added].find((each) => isSameDay(each, repair));
  for (const repair of file) if (!held(repair)) added.push(repair);
  return { added, differing: file.filter((repair) => held(repair)!.words !== repair.words) };
}
const isSameDay = (a: KeptRepair, b: KeptRepair): boolean => a.at === b.at && isOfPart(a, b);
