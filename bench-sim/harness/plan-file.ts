// SPDX-License-Identifier: MIT
// A plan's record in a file, with the records of its runs: written after every item, read to go on where it stopped.
import { z } from 'zod';
import { planRecordSchema } from '#checks/plans/plan-record';
import { recordSchema } from '#core/record/run-record';
import { BadUsage } from './bad-usage.ts';
import { readJsonFile } from './json-file.ts';

const planFileSchema = planRecordSchema.extend({ runs: z.array(recordSchema) });
export type PlanFile = z.infer<typeof planFileSchema>;

const advice = 'Give --resume the file that --record of the same plan wrote.';

/** Throws BadUsage when it is no plan record, or one of another plan or car. */
export function readPlanFile(path: string, plan: string, car: string): PlanFile {
  const content = readJsonFile(path, { what: 'plan', flag: '--resume', code: 'badFile', advice });
  const parsed = planFileSchema.safeParse(content);
  if (!parsed.success) throw bad(path, parsed.error.issues[0].message);
  if (parsed.data.plan !== plan) throw bad(path, `it is of the plan "${parsed.data.plan}", not "${plan}"`);
  if (parsed.data.car !== car) throw bad(path, `it is of the car "${parsed.data.car}", not "${car}"`);
  return parsed.data;
}
const bad = (path: string, why: string): BadUsage =>
  new BadUsage('badFile', `The plan file ${path} can't be resumed: ${why}. ${advice}`);
