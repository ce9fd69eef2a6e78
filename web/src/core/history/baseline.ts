// SPDX-License-Identifier: MIT
// A part's own baseline: what its first accepted runs say of it, and the limit that follows. It is data of the
// car, so that a record can be judged again from itself alone. It knows the control chart and the allowances.
import { z } from 'zod';
import { identitySchema } from '../parts/identity.ts';
import { allowances } from '../limits/class-data.ts';
import type { Limit } from '../verdicts/limit.ts';
import type { BudgetLine } from '../measurements/measurement.ts';
import { staysWithRig } from '../measurements/rig-errors.ts';
import { firstRunsSchema, type FirstRuns } from '../verdicts/first-runs-schema.ts';
import { individualsChart, meanOf } from './individuals-chart.ts';
import type { HistoryPoint } from './part-history.ts';

export const baselineRuns = 5;
const finite = (what: string) => z.number({ error: `${what}: a number is needed` });

export const baselineSchema = z
  .strictObject({
    checkResultId: z.string().regex(/^[a-z0-9-]+\/[a-z0-9-]+$/, {
      error: 'name the result as check/result, such as "motor-no-load/no-load-current"',
    }),
    partName: z.string().min(1, 'a baseline names the part it is of'),
    partId: identitySchema.optional(),
    unit: z.string().min(1, 'a baseline needs its unit'),
    /** What its results hold at, where that hangs on the car. */
    condition: z.string().optional(),
    centre: finite('the mean of the first runs'),
    sigma: finite('the spread of the first runs').min(0, 'a spread cannot be below 0'),
    runIds: z
      .array(z.string().min(1))
      .min(2, 'a baseline needs two runs at least; five are usual')
      .refine((ids) => new Set(ids).size === ids.length, 'a run counts once only in a baseline'),
    fromDate: z.iso.date({ error: 'the date of the first run as year-month-day' }),
    toDate: z.iso.date({ error: 'the date of the last run as year-month-day' }),
    rigSerial: z.string(),
    /** What that rig was off by in their mean; baselines from before it was kept lack it. */
    rigErrors: firstRunsSchema.shape.errors.optional(),
  })
  .refine(
    ({ fromDate, toDate }) => fromDate <= toDate,
    'the first run lies after the last: are they swapped?',
  );
export type Baseline = Readonly<z.infer<typeof baselineSchema>>;

export const baselinesSchema = z
  .array(baselineSchema)
  .refine(
    (list) => new Set(list.map(({ checkResultId }) => checkResultId)).size === list.length,
    'there are two baselines of one result: keep the newer',
  );
export type BaselineAnswer =
  { readonly ready: true; readonly baseline: Baseline } | { readonly ready: false; readonly words: string };

/** The baseline of a history, from its first `count` points; or what is missing, in words. */
export function baselineOf(
  checkResultId: string,
  points: readonly HistoryPoint[],
  count = baselineRuns,
): BaselineAnswer {
  const first = points.slice(0, count);
  if (first.length < count) return waiting(first.length, count);
  if (new Set(first.map(({ rigSerial }) => rigSerial)).size > 1)
    return {
      ready: false,
      words: 'The first runs are from different rigs. A baseline needs them from one rig.',
    };
  const { centre, sigma } = individualsChart(first.map(({ finding }) => finding.value));
  const [start, end] = [first[0], first[first.length - 1]];
  return {
    ready: true,
    baseline: {
      checkResultId,
      partName: start.partName,
      ...(start.partId !== undefined && { partId: start.partId }),
      unit: start.finding.unit,
      ...(start.finding.condition !== undefined && { condition: start.finding.condition }),
      centre,
      sigma,
      runIds: first.map(({ runId }) => runId),
      fromDate: start.at.slice(0, 10),
      toDate: end.at.slice(0, 10),
      rigSerial: start.rigSerial,
      rigErrors: rigErrorsOf(first),
    },
  };
}
/** Lines that all of the runs have from one source, with their mean; a calibration between leaves its lines out. */
function rigErrorsOf(points: readonly HistoryPoint[]): FirstRuns['errors'] {
  const [start, ...others] = points.map(({ finding }) => finding.budget);
  const twinsOf = ({ source, origin }: BudgetLine) =>
    others.flatMap((budget) => budget.filter((line) => line.source === source && line.origin === origin));
  return start.filter(staysWithRig).flatMap((line) => {
    const all = [line, ...twinsOf(line)];
    if (all.length < points.length) return [];
    return [{ source: line.source, origin: line.origin, u: meanOf(all.map(({ u }) => u)) }];
  });
}
const waiting = (have: number, count: number): BaselineAnswer => ({
  ready: false,
  words: `${have} of the ${count} runs that make a baseline. ${count - have} more, none of them failed.`,
});

interface Allowance {
  readonly above?: number;
  readonly watchAbove?: number;
  readonly below?: number;
}
/** Bounds at the usual allowance about the mean, but never inside the chart's: a part's own scatter is no fault. */
export function baselineLimit(baseline: Baseline): Limit {
  const { checkResultId, centre, sigma, unit } = baseline;
  const allowance = (allowances as Readonly<Record<string, Allowance>>)[checkResultId];
  const size = Math.abs(centre);
  const at = (share: number | undefined) => Math.max((share ?? 0) * size, 3 * sigma);
  const [above, below] = allowance ? [allowance.above, allowance.below] : [0, 0];
  const min = centre - at(below);
  return {
    ...(below !== undefined && min > 0 && { min }),
    ...(above !== undefined && { max: centre + at(above) }),
    ...(allowance?.watchAbove !== undefined && { warnMax: centre + at(allowance.watchAbove) }),
    unit,
    kind: 'baseline',
    ...(baseline.rigErrors && {
      firstRuns: { rigSerial: baseline.rigSerial, centre, errors: baseline.rigErrors },
    }),
    source: `${sourceWords(baseline)}, ${widthWords(allowance, size, sigma)}`,
  };
}
const sourceWords = ({ runIds, fromDate, toDate }: Baseline): string =>
  `its own first ${runIds.length} runs, ${fromDate} to ${toDate}`;
function widthWords(allowance: Allowance | undefined, size: number, sigma: number): string {
  const share = Math.max(allowance?.above ?? 0, allowance?.below ?? 0);
  if (3 * sigma >= share * size) return 'at three spreads of an individuals chart';
  return `${Math.round(share * 100)} % about their mean (from memory, no source)`;
}
