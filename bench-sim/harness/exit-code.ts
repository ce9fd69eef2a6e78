// SPDX-License-Identifier: MIT
// What the command line ends with: 0 pass, 1 fail, 2 bad usage or input, 3 undecided or not measured, 4 tripped or
// stopped, 5 no rig or link lost. It prints nothing.
import type { RunRecord } from '#core/record/run-record';
import { RigError } from '#session/rig-error';
import { BadUsage } from './bad-usage.ts';

export const exitCode = {
  pass: 0,
  fail: 1,
  badUsage: 2,
  undecided: 3,
  tripped: 4,
  noRig: 5,
} as const;

export function exitOf({ ending, verdict }: Pick<RunRecord, 'ending' | 'verdict'>): number {
  if (ending.kind === 'link lost') return exitCode.noRig;
  if (ending.kind === 'tripped' || ending.kind === 'stopped') return exitCode.tripped;
  if (verdict === 'pass') return exitCode.pass;
  return verdict === 'fail' ? exitCode.fail : exitCode.undecided;
}
/** Of a plan: the first of 5, 4, 1, 3, 0 that occurs. */
export function exitOfPlan(codes: readonly number[]): number {
  const order = [exitCode.noRig, exitCode.tripped, exitCode.fail, exitCode.undecided];
  return order.find((code) => codes.includes(code)) ?? exitCode.pass;
}
export function exitOfError(error: unknown): number {
  if (error instanceof BadUsage) return exitCode.badUsage;
  if (!(error instanceof RigError)) return exitCode.undecided;
  return error.code === 'tripped' ? exitCode.tripped : exitCode.noRig;
}
export const errorDocument = (error: unknown): { error: { code: string; message: string } } => {
  const code = error instanceof BadUsage || error instanceof RigError ? error.code : 'fault';
  return { error: { code, message: error instanceof Error ? error.message : String(error) } };
};
