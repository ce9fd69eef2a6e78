// SPDX-License-Identifier: MIT
// Whether a tap's value stands still, from the values as they come in: their mean over the last second, and since when
// they have stayed within a band. For looking at only; what counts is measured by the rig's stream.

export interface SeenValue {
  readonly atMs: number;
  readonly value: number;
}
export interface SteadyReading {
  /** Null while nothing fresh is there. */
  readonly value: number | null;
  readonly steadyS: number;
}
/** Longest time looked back. */
export const lookBackMs = 6000;
const freshMs = 600;
const meanMs = 1000;
/** Values within this share of the tap's range of their mean are one value (common practice, no source). */
const bandShare = 0.004;

export function steadyReading(
  seen: readonly SeenValue[],
  range: { readonly low: number; readonly high: number },
  nowMs: number,
): SteadyReading {
  const last = seen.at(-1);
  if (!last || nowMs - last.atMs > freshMs) return { value: null, steadyS: 0 };
  const recent = seen.filter(({ atMs }) => atMs > last.atMs - meanMs);
  const value = recent.reduce((sum, each) => sum + each.value, 0) / recent.length;
  const band = bandShare * (range.high - range.low);
  const moved = seen.findLast((each) => Math.abs(each.value - value) > band);
  const since = moved ? seen.find(({ atMs }) => atMs > moved.atMs) : seen[0];
  return { value, steadyS: since ? Math.max(0, nowMs - since.atMs) / 1000 : 0 };
}
/** "steady for 3 s", "moving, wait", "not seen". */
export function steadyWords({ value, steadyS }: SteadyReading): string {
  if (value === null) return 'not seen';
  return steadyS < 1 ? 'moving, wait' : `steady for ${Math.floor(steadyS)}\u00a0s`;
}
