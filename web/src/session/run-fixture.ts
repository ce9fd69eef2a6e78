// SPDX-License-Identifier: MIT
// A toy check's procedure run to its end on a scripted rig, as fast as the made clock goes.
import type { Bench } from '#checks/check';
import { runCheck, type FinishedRun, type RunOptions } from './check-runner.ts';
import { car, label, toyCheck, type connected } from './session-fixture.ts';

type Scene = Awaited<ReturnType<typeof connected>>;
export type Procedure = (bench: Bench) => Promise<unknown>;
export async function run(
  { clock, session }: Scene,
  procedure: Procedure,
  more: Partial<RunOptions> = {},
): Promise<FinishedRun> {
  const options = { car, label, ask: () => Promise.resolve(), ...more };
  return clock.settle(runCheck(session, toyCheck(procedure), options));
}
