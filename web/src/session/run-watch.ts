// SPDX-License-Identifier: MIT
// What may break a run off: a trip, a lost link, a drive that ended by itself, a stream that fell silent, the
// person. It only watches and says so to the run's waits; making safe is not its job.
import { codeName, eventCode, outputCode } from '#protocol/codes';
import type { AnswerTo } from './command-queue.ts';
import type { DrivenOutput } from './drive-keeper.ts';
import { linkLostWords } from './rig-error.ts';
import type { RigSession } from './rig-session.ts';
import { RunStopped } from './run-stopped.ts';
import type { RunWaits } from './run-waits.ts';
import type { SessionState } from './session-state.ts';

const lookEveryMs = 250;
/** 2 s. Looks are counted, not time: a computer that was held up itself has not listened meanwhile. */
const silentLooks = 8;

/** Returns a function that ends the watching. */
export function watchRun(session: RigSession, waits: RunWaits, signal?: AbortSignal): () => void {
  let looksInSilence = 0;
  const hear = () => {
    looksInSilence = 0;
  };
  const silence = () => {
    looksInSilence += 1;
    if (looksInSilence > silentLooks) waits.break(new RunStopped('link lost', linkLostWords));
  };
  const abort = () => waits.break(stopOf(signal));
  if (signal?.aborted) abort();
  signal?.addEventListener('abort', abort);
  const ends = [
    session.blocks.add(hear),
    session.bursts.add(hear),
    session.states.add((state) => stateChanged(state, waits)),
    session.events.add((event) => eventCame(session, event, waits)),
    session.clock.every(lookEveryMs, silence),
    () => signal?.removeEventListener('abort', abort),
  ];
  return () => ends.forEach((end) => end());
}
/** Whoever aborts may hand in why; a person's stop needs no reason. */
function stopOf(signal?: AbortSignal): RunStopped {
  const reason: unknown = signal?.reason;
  return reason instanceof RunStopped ? reason : new RunStopped('stopped', 'The run was stopped by hand.');
}
function stateChanged(state: SessionState, waits: RunWaits): void {
  if (state.kind === 'tripped') waits.break(new RunStopped('tripped', state.trip.words));
  if (state.kind === 'lost') waits.break(new RunStopped('link lost', state.words));
  if (state.kind === 'ending' || state.kind === 'none')
    waits.break(new RunStopped('stopped', 'The rig went back to safe before the check was through.'));
}
function eventCame({ drives }: RigSession, { kind, value }: AnswerTo<'event'>, waits: RunWaits): void {
  if (kind !== eventCode.driveEnded) return;
  const output = Object.keys(outputCode).find((name) => outputCode[name as DrivenOutput] === value);
  if (!output || !drives.holds(output as DrivenOutput)) return;
  const words = `The drive of the ${codeName('output', value)} ended by itself because it was not renewed in time. Check the cable and run again.`;
  waits.break(new RunStopped('failed', words));
}
