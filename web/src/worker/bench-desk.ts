// SPDX-License-Identifier: MIT
// Owns link and session for the page. Beats go out only while the page could stop the run, so that
// a frozen page stops the motor; a hidden page ends a run. It knows no browser: the worker hands in
// links, clocks and chance.
import { checks } from '#checks/index';
import type { ByteLink } from '#session/byte-link';
import type { Clock } from '#session/clock';
import { RigSession } from '#session/rig-session';
import { writeRecord } from '#core/record/record-reader';
import type { VirtualTruth } from '#core/record/virtual-truth';
import type { JournalStore } from '../adapters/journal-store.ts';
import { CalibrationDesk } from './calibration-desk.ts';
import type { CalibrationWish } from './calibration-messages.ts';
import { LiveFeed } from './live-feed.ts';
import type { FromBench, RigCard, ToBench } from './messages.ts';
import { PageWatch } from './page-watch.ts';
import { checkCard, phaseOf, rigCard } from './rig-words.ts';
import { RunDesk } from './run-desk.ts';
import { RunJournal } from './run-journal.ts';

/** How a rig is reached, and what it is asked for when a run is over. */
export interface RigWay {
  readonly kind: RigCard['way'];
  readonly truth?: () => Promise<VirtualTruth | null>;
}
export interface DeskTools {
  readonly tell: (message: FromBench) => void;
  /** The computer's clock, ms: for the ticks only. */
  readonly now: () => number;
  readonly randomWord: () => number;
  /** The computer's date, as in 2026-11-25: old calibrations count less. */
  readonly today?: () => string;
  /** Where runs are written as they go. */
  readonly journal?: JournalStore;
}
const hiddenWords =
  'The page was hidden, and a hidden page cannot watch a run. Keep it in front and run the check again.';
const wordsOf = (thrown: unknown) => (thrown instanceof Error ? thrown.message : String(thrown));

export class BenchDesk {
  private session: RigSession | null = null;
  private live: LiveFeed | null = null;
  private truth: RigWay['truth'];
  private readonly page: PageWatch;
  private readonly runs: RunDesk;
  private readonly journal?: RunJournal;
  private readonly calibrations: CalibrationDesk;
  private way: RigCard['way'] = 'serial';

  constructor(private readonly tools: DeskTools) {
    this.page = new PageWatch(tools.now);
    const lost = (words: string) => tools.tell({ kind: 'trouble', words, during: 'run' });
    this.journal = tools.journal && new RunJournal(tools.journal, tools.now, lost);
    this.runs = new RunDesk(tools.tell, this.journal);
    this.calibrations = new CalibrationDesk(tools.tell);
    tools.tell({ kind: 'catalogue', checks: checks.map(checkCard) });
  }
  /** Resolves false when no rig was found there; the page has been told why. */
  async open(link: ByteLink, clock: Clock, way: RigWay): Promise<boolean> {
    await this.close();
    const { randomWord, today, tell } = this.tools;
    const session = new RigSession(link, clock, {
      mayBeat: () => this.page.alive(way.kind),
      randomWord,
      today,
    });
    this.session = session;
    this.truth = way.truth;
    this.way = way.kind;
    session.states.add((state) => tell({ kind: 'phase', ...phaseOf(state) }));
    try {
      await session.connect();
      this.live = new LiveFeed(session.rig);
      session.blocks.add((block) => this.live?.push(block));
      tell({ kind: 'rig', rig: rigCard(session, way.kind) });
      tell({ kind: 'phase', ...phaseOf(session.state) });
      await this.watchTaps();
      return true;
    } catch (thrown) {
      this.trouble('open', thrown);
      return false;
    }
  }
  async close(): Promise<void> {
    const { session } = this;
    this.session = null;
    this.live = null;
    this.runs.stop();
    this.calibrations.stop();
    await session?.close();
  }
  /** Everything but opening; commands that fail are told to the page. */
  take(message: ToBench): void {
    const { session } = this;
    if (message.kind === 'tick') this.tick();
    else if (message.kind === 'hidden') this.hide(message.hidden);
    else if (message.kind === 'stop') this.stop();
    else if (message.kind === 'done') this.runs.done(message.askId, message.figure);
    else if (message.kind === 'close') this.close().catch((thrown) => this.trouble('open', thrown));
    else if (message.kind === 'clearTrip')
      session?.clearTrip().catch((thrown) => this.trouble('open', thrown));
    else if (message.kind === 'run') this.run(message).catch((thrown) => this.trouble('run', thrown));
    else if (message.kind === 'calibrate')
      this.calibrate(message.wish).catch((thrown) => this.trouble('calibrate', thrown));
    else if (message.kind === 'calibrationAnswer') this.calibrations.answer(message.askId, message.value);
    else if (message.kind === 'kept') void this.journal?.forget(message.runId);
    else if (message.kind === 'recover')
      this.recover(message.runId).catch((thrown) => this.trouble('show', thrown));
    else if (message.kind === 'show') this.show(message.runId, message.text);
  }
  private tick(): void {
    this.page.tick();
    this.runs.pass();
    const report = this.session && this.live?.report(this.session.clock.now());
    if (report) this.tools.tell(report);
  }
  private hide(hidden: boolean): void {
    this.page.hidden = hidden;
    if (hidden && this.busy) this.stop(hiddenWords);
  }
  /** The safe order at once; a run breaks off with it. */
  private stop(words?: string): void {
    const { session } = this;
    const idle = !this.busy;
    this.runs.stop(words);
    this.calibrations.stop(words);
    if (!session || session.state.kind === 'none' || session.state.kind === 'lost') return;
    const sent = idle ? session.end() : session.ask({ type: 'safeAll' });
    sent.catch((thrown) => this.trouble('open', thrown));
  }
  private async run(message: Extract<ToBench, { kind: 'run' }>): Promise<void> {
    const check = checks.find(({ id }) => id === message.checkId);
    if (!check) throw new RangeError(`there is no check "${message.checkId}"`);
    await this.runs.run(this.ready(), check, message, this.truth);
    if (this.session?.state.kind === 'ready') await this.watchTaps().catch(() => {});
  }
  private async calibrate(wish: CalibrationWish): Promise<void> {
    const session = this.ready();
    await this.calibrations.run(session, wish);
    if (this.session !== session || session.state.kind !== 'ready') return;
    this.tools.tell({ kind: 'rig', rig: rigCard(session, this.way) });
    await this.watchTaps().catch(() => {});
  }
  private get busy(): boolean {
    return this.runs.running || this.calibrations.running;
  }
  private ready(): RigSession {
    if (this.session && !this.busy) return this.session;
    throw new Error('The bench is not ready. Connect a rig, or end the run that goes on.');
  }
  private async recover(runId: string): Promise<void> {
    const record = (await this.journal?.recover(runId)) ?? null;
    this.tools.tell({ kind: 'recovered', runId, text: record && writeRecord(record) });
  }
  private show(runId: string, text: string): void {
    try {
      this.runs.show(runId, text);
    } catch (thrown) {
      this.trouble('show', thrown);
    }
  }
  /** While nothing runs: what the car's screen shows live. */
  private async watchTaps(): Promise<void> {
    const channel = (id: string) => this.session?.rig.descriptor.taps.find((tap) => tap.id === id)?.channel;
    const known = ['packVoltage', 'packCurrentNarrow', 'railVoltage', 'railCurrent'].map(channel);
    const fast = known.filter((each) => each !== undefined);
    while (fast.length < 4) fast.push(fast[0] ?? 0);
    await this.session?.ask({ type: 'scanList', fast, slow: 7 });
    await this.session?.ask({ type: 'stream', on: 1 });
  }
  private trouble(during: 'open' | 'run' | 'show' | 'calibrate', thrown: unknown): void {
    this.tools.tell({ kind: 'trouble', words: wordsOf(thrown), during });
  }
}
