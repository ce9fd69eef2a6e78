// SPDX-License-Identifier: MIT
// One run at a time: hands a check to the runner, passes its progress, questions and columns to the page, and
// its record as text. It judges nothing and draws nothing.
import type { Bench, Check } from '#checks/check';
import type { Meter } from '#core/calibration/meter';
import type { Car } from '#core/parts/part';
import type { RunRecord } from '#core/record/run-record';
import { samplesOf, readRecord, writeRecord } from '#core/record/record-reader';
import { virtualSerial, withTruth, type VirtualTruth } from '#core/record/virtual-truth';
import type { SampleStore } from '#core/samples/sample-store';
import type { NumberWanted } from '#core/units/asked-number';
import { runCheck } from '#session/check-runner';
import type { RigSession } from '#session/rig-session';
import { RunStopped } from '#session/run-stopped';
import type { FromBench } from './messages.ts';
import type { RunJournal } from './run-journal.ts';
import { TraceFeed } from './trace-feed.ts';

export interface RunWish {
  readonly runId: string;
  readonly car: Car;
  readonly startedAt: string;
  readonly meter?: Meter;
}
interface Current {
  readonly abort: AbortController;
  readonly feed: TraceFeed;
  samples: SampleStore | null;
  /** States of the session since the run began. */
  readonly states: RunRecord['events'];
}

export class RunDesk {
  private current: Current | null = null;
  private answers = new Map<number, (figure?: number) => void>();
  private asked = 0;

  constructor(
    private readonly tell: (message: FromBench) => void,
    private readonly journal?: RunJournal,
  ) {}

  get running(): boolean {
    return this.current !== null;
  }
  /** `truth`: what a virtual rig adds to its record. */
  async run(
    session: RigSession,
    check: Check,
    wish: RunWish,
    truth: () => Promise<VirtualTruth | null> = () => Promise.resolve(null),
  ): Promise<void> {
    const { runId, car, startedAt, meter } = wish;
    const virtual = await truth();
    const rigSerial = virtual ? virtualSerial(virtual.seed) : undefined;
    const feed = new TraceFeed(runId, session.rig, car.motor.polePairs);
    const current: Current = { abort: new AbortController(), feed, samples: null, states: [] };
    this.current = current;
    this.journal?.begin(session, { runId, check: check.id, startedAt, car });
    const unwatch = session.states.add(({ kind }) =>
      current.states.push({ atS: current.samples?.latestS ?? 0, kind: 'state', words: kind }),
    );
    const watched = { ...check, procedure: (bench: Bench) => this.watch(check, bench, current) };
    const { record } = await runCheck(session, watched, {
      car,
      meter,
      label: { id: runId, startedAt, tool: 'page', rigSerial },
      ask: (words, wanted) => this.ask(runId, words, wanted),
      progress: (progress) => this.tell({ kind: 'progress', runId, ...progress }),
      signal: current.abort.signal,
    });
    unwatch();
    this.journal?.end();
    const kept = withTruth(record, await truth());
    this.current = null;
    this.answers.clear();
    this.tell({ kind: 'trace', trace: feed.all(samplesOf(record), record.events), fresh: true });
    this.tell({ kind: 'finished', runId, text: writeRecord(kept) });
  }
  /** Without words it was a hand's. */
  stop(words?: string): void {
    this.current?.abort.abort(words === undefined ? undefined : new RunStopped('stopped', words));
  }
  /** `figure`: where one was wanted. */
  done(askId: number, figure?: number): void {
    this.answers.get(askId)?.(figure);
    this.answers.delete(askId);
  }
  /** Columns that came since the last call. */
  pass(): void {
    const { current } = this;
    this.journal?.pass();
    const trace = current?.samples && current.feed.next(current.samples, current.states);
    if (trace) this.tell({ kind: 'trace', trace, fresh: false });
  }
  /** A kept record: its columns, whole. Throws RecordError. */
  show(runId: string, text: string): void {
    const record = readRecord(text);
    const feed = new TraceFeed(runId, record.rig, record.car.motor.polePairs);
    this.tell({ kind: 'trace', trace: feed.all(samplesOf(record), record.events), fresh: true });
  }
  private watch(check: Check, bench: Bench, current: Current): Promise<unknown> {
    current.samples = bench.samples;
    return check.procedure(bench);
  }
  private ask(runId: string, words: string, wanted?: NumberWanted): Promise<number | void> {
    const askId = (this.asked += 1);
    this.tell({ kind: 'ask', runId, askId, words, wanted });
    return new Promise((resolve) => this.answers.set(askId, resolve));
  }
}
