// SPDX-License-Identifier: MIT
// Runs one check on one session, from its needs to its record. However the run ends, the rig is brought back to
// safe before the record is made; a link that is lost meanwhile is told. It knows no check by name.
import type { Check, Progress } from '#checks/check';
import { missingNote, oldNotes } from '#core/calibration/calibration-age';
import type { Meter } from '#core/calibration/meter';
import type { Car } from '#core/parts/part';
import type { RunRecord } from '#core/record/run-record';
import { RunBench, type Ask } from './bench.ts';
import { missingOf } from '#checks/needs';
import type { RigSession } from './rig-session.ts';
import { RunLog } from './run-log.ts';
import { reportOf, type RunLabel } from './run-report.ts';
import { asRunStopped, RunStopped } from './run-stopped.ts';
import { RunWaits } from './run-waits.ts';
import { watchRun } from './run-watch.ts';

export interface RunOptions {
  readonly car: Car;
  readonly label: Omit<RunLabel, 'firmware'>;
  readonly ask: Ask;
  readonly progress?: (progress: Progress) => void;
  /** The person's stop. */
  readonly signal?: AbortSignal;
  /** The person's hand-held meter, for what a calibration would bring. */
  readonly meter?: Meter;
}
export interface FinishedRun {
  readonly record: RunRecord;
  /** Why the procedure broke off, with its cause; undefined when it came to its end. */
  readonly stopped?: RunStopped;
}
export async function runCheck(session: RigSession, check: Check, options: RunOptions): Promise<FinishedRun> {
  const { car, ask, progress = () => {}, signal } = options;
  const waits = new RunWaits();
  const bench = new RunBench(session, waits, {
    car,
    taps: check.needs.taps,
    ask,
    progress,
    provesFeed: check.provesFeed,
  });
  const log = new RunLog(bench);
  const unwatch = watchRun(session, waits, signal);
  const outcome = await procedureOf(session, check, bench);
  unwatch();
  const wentSafe = await makeSafe(session, log);
  const { sent, answered, worstGapMs } = session.beats;
  calibrationNotes(session, check).forEach((words) => log.note('calibration', words));
  log.note('beats', `${answered} of ${sent} beats answered, longest gap ${worstGapMs} ms`);
  bench.samples.clock = session.rigClock.fit;
  bench.close();
  log.close();
  const ended = outcome instanceof RunStopped ? outcome : (wentSafe ?? outcome);
  const { rig, firmware } = session;
  const ran = {
    check,
    car,
    rig,
    samples: bench.samples,
    events: log.events,
    meter: options.meter,
    outcome: ended,
  };
  const record = reportOf(ran, { ...options.label, firmware });
  if (check.provesFeed) barFeed(session, check, record.verdict);
  return { record, stopped: ended instanceof RunStopped ? ended : undefined };
}
/** A first power that failed bars the full feed until one passes; one that measured nothing changes nothing. */
function barFeed(session: RigSession, { title }: Check, verdict: RunRecord['verdict']): void {
  if (verdict === 'pass') session.feedBarred = null;
  if (verdict === 'fail')
    session.feedBarred = `"${title}" failed in this session, so the full feed stays open. Mend what it found and run it again; this check can run once it has passed.`;
}
/** Old and missing calibrations of the check's own taps: both make the intervals wider. */
function calibrationNotes({ rig, keptStore, today }: RigSession, { needs }: Check): string[] {
  const used = (keptStore?.calibration ?? []).filter(({ tap }) => needs.taps.includes(tap));
  const old = today && keptStore ? oldNotes({ ...keptStore, calibration: used }, today) : [];
  return [...old, ...missingNote(rig.descriptor, rig.store, needs.taps)];
}
async function procedureOf(
  session: RigSession,
  check: Check,
  bench: RunBench,
): Promise<{ evidence: unknown } | RunStopped> {
  const missing = missingOf(check.needs, session.rig);
  if (missing) return new RunStopped('failed', missing);
  if (session.state.kind === 'tripped') return new RunStopped('tripped', session.state.trip.words);
  try {
    return { evidence: await check.procedure(bench) };
  } catch (thrown) {
    return asRunStopped(thrown);
  }
}
/** Null when the rig told that it is safe; a run is not done before that. */
async function makeSafe(session: RigSession, log: RunLog): Promise<RunStopped | null> {
  try {
    await session.end();
    if (session.state.kind === 'lost') return new RunStopped('link lost', session.state.words);
    log.note('safe', 'The rig is safe.');
    return null;
  } catch (thrown) {
    return asRunStopped(thrown);
  }
}
