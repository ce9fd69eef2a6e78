// SPDX-License-Identifier: MIT
// One check on an open place, from label to a record with the virtual truth in it; shared by single checks and
// plans. It prints nothing.
import type { Check, Progress } from '#checks/check';
import { wiringWords } from '#checks/wiring';
import { truthOf, virtualSerial, withTruth } from '#core/record/virtual-truth';
import type { RunRecord } from '#core/record/run-record';
import { runCheck } from '#session/check-runner';
import type { RunStopped } from '#session/run-stopped';
import type { BenchPlace } from './bench-place.ts';

export interface RunManner {
  readonly progress?: (progress: Progress) => void;
  readonly signal?: AbortSignal;
}
export async function runOne(
  { session, car, hands, wires, virtual }: BenchPlace,
  check: Check,
  manner: RunManner,
): Promise<{ record: RunRecord; stopped?: RunStopped }> {
  for (const step of check.wiring) await wires?.(wiringWords(step));
  const startedAt = new Date().toISOString();
  const rigSerial = virtual && virtualSerial(virtual.seed);
  const label = { id: `${check.id} ${startedAt}`, startedAt, tool: 'command line', rigSerial };
  const { record, stopped } = await runCheck(session, check, { car, label, ask: hands, ...manner });
  return { record: withTruth(record, virtual ? truthOf(virtual) : null), stopped };
}
