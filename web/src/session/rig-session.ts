// SPDX-License-Identifier: MIT
// One session with one rig, from opening the port to closing it: handshake, live, safe again, trip, loss. It tells
// listeners what arrives. It knows no checks: power-up and procedures use it from outside.
import { eventCode, stateCode } from '#protocol/codes';
import type { Message } from '#protocol/messages';
import type { RigDescription, Store } from '#core/samples/rig-description';
import { BeatKeeper } from './beat-keeper.ts';
import type { ByteLink } from './byte-link.ts';
import type { Clock } from './clock.ts';
import { CommandQueue, type AnswerTo, type Command } from './command-queue.ts';
import { DriveKeeper } from './drive-keeper.ts';
import { shakeHands, type Known } from './handshake.ts';
import { Listeners } from './listeners.ts';
import { RigClock } from './rig-clock.ts';
import { linkLostWords, RigError } from './rig-error.ts';
import { RigLine } from './rig-line.ts';
import { readKept, writeKept } from './rig-store.ts';
import { mayFollow, type SessionState } from './session-state.ts';
import { bareTrip, restartReport, tripReport, type TripReport } from './trip-report.ts';

export interface SessionOptions {
  /** False while whoever watches could not stop the run: beats stop then. */
  readonly mayBeat: () => boolean;
  /** A number of 32 bits, drawn at random: the name of a live session. */
  readonly randomWord: () => number;
  /** The day, ISO 8601, by which calibrations are old; where it is not given, none is. */
  readonly today?: () => string;
}
/** The safe order takes 2 s; with the rig's and the link's slack. */
const safeWithinMs = 6000;

export class RigSession {
  readonly blocks = new Listeners<AnswerTo<'scanBlock'>>();
  readonly bursts = new Listeners<AnswerTo<'burstBlock'>>();
  readonly events = new Listeners<AnswerTo<'event'>>();
  readonly states = new Listeners<SessionState>();
  readonly line: RigLine;
  readonly queue: CommandQueue;
  readonly drives: DriveKeeper;
  beats: BeatKeeper;
  /** Why the full feed stays open in this session: a first power that failed and was not passed since. */
  feedBarred: string | null = null;
  rigClock = new RigClock(0.5e-6, 0.005);
  private current: SessionState = { kind: 'none' };
  private known: Known | null = null;

  constructor(
    private readonly link: ByteLink,
    readonly clock: Clock,
    private readonly options: SessionOptions,
  ) {
    this.line = new RigLine(link);
    this.line.onMessage((message) => this.take(message));
    this.queue = new CommandQueue(this.line, clock);
    this.drives = new DriveKeeper(this.queue, clock);
    this.beats = new BeatKeeper(this.line, clock, options.mayBeat, this.rigClock);
    link.onLost(() => this.lose());
  }
  get state(): SessionState {
    return this.current;
  }
  get rig(): RigDescription {
    if (!this.known) throw new RigError('notReady');
    return this.known;
  }
  /** What the rig keeps, as it keeps it; `rig.store` is what of it counts today. */
  get keptStore(): Store | null {
    return this.known?.keptStore ?? null;
  }
  /** ISO 8601; undefined where nobody tells it. */
  get today(): string | undefined {
    return this.options.today?.();
  }
  /** Drawn at random, at most seven letters and digits: for a rig that has no number yet. */
  freshNumber(): string {
    return (this.options.randomWord() >>> 0).toString(36);
  }
  get notes(): readonly string[] {
    return this.known?.notes ?? [];
  }
  get firmware(): string {
    return this.known ? Array.from(this.known.hello.firmware).join('.') : '';
  }
  /** Opens the line and gets to know the rig; whatever it was doing, it is safe or tripped afterwards. */
  async connect(): Promise<void> {
    if (!mayFollow(this.current.kind, 'connecting'))
      throw new RigError('notReady', 'A rig is connected already.');
    this.enter({ kind: 'connecting' });
    this.feedBarred = null;
    this.queue.reopen();
    try {
      await this.link.open();
      this.known = await shakeHands(this);
      const { tickS, clockTolerance } = this.known.descriptor;
      this.rigClock = new RigClock(tickS, clockTolerance);
      this.beats = new BeatKeeper(this.line, this.clock, this.options.mayBeat, this.rigClock);
      await this.settle();
    } catch (error) {
      await this.link.close();
      if (this.current.kind !== 'lost') this.enter({ kind: 'none' });
      throw error;
    }
  }
  async close(): Promise<void> {
    if (this.current.kind === 'live' || this.current.kind === 'ending') await this.end().catch(() => {});
    this.beats.stop();
    this.drives.clear();
    this.queue.close(new RigError('notReady'));
    await this.link.close();
    this.enter({ kind: 'none' });
  }
  ask(command: Command, timeoutMs?: number): Promise<Message> {
    return this.queue.ask(command, timeoutMs);
  }
  async goLive(): Promise<void> {
    if (this.current.kind === 'tripped') throw new RigError('tripped', this.current.trip.words);
    if (this.current.kind !== 'ready') throw new RigError('notReady');
    const session = this.options.randomWord() >>> 0;
    await this.ask({ type: 'goLive', session });
    if (this.current.kind !== 'ready') return;
    this.enter({ kind: 'live' });
    this.beats.start(session);
  }
  /** Beats while nothing is live protect nothing: they tell how long the rig's second is. */
  keepTime(): void {
    if (this.current.kind === 'ready') this.beats.start(0);
  }
  /** Writes what the rig shall keep, while it is safe, and goes on with what it then tells. */
  async keep(store: Store): Promise<void> {
    if (!this.known || this.current.kind !== 'ready') throw new RigError('notReady');
    await writeKept(this, store, this.known.descriptor);
    const kept = await readKept(this.queue, this.known.descriptor, this.today);
    this.known = { ...this.known, ...kept };
  }

  /** The safe order, from any state; resolves when the rig has told that it is over, or is lost. */
  async end(): Promise<void> {
    this.drives.clear();
    if (this.current.kind === 'lost' || this.current.kind === 'none') return;
    await this.ask({ type: 'safeAll' });
    if (this.current.kind === 'live') this.enter({ kind: 'ending' });
    await this.untilSafe();
    this.beats.stop();
  }
  /** After a trip: allowed once the safe order is over. */
  async clearTrip(): Promise<void> {
    await this.ask({ type: 'clearTrip' });
    if (this.current.kind === 'tripped') this.enter({ kind: 'ready' });
  }
  private async settle(): Promise<void> {
    const found = (await this.ask({ type: 'readState' })) as AnswerTo<'state'>;
    if (found.state === stateCode.tripped)
      return this.enter({ kind: 'tripped', trip: tripReport(found, this.rig) });
    if (found.state === stateCode.safe) return this.enter({ kind: 'ready' });
    this.enter({ kind: 'ending' });
    await this.end();
  }
  /** Asks, as a state told unasked may get lost on the way. */
  private async untilSafe(): Promise<void> {
    const endMs = this.clock.now() + safeWithinMs;
    while (this.clock.now() < endMs) {
      const found = (await this.ask({ type: 'readState' })) as AnswerTo<'state'>;
      this.observe(found);
      if (found.state === stateCode.safe || found.state === stateCode.tripped) return this.orderOver(endMs);
      await new Promise<void>((done) => this.clock.after(100, done));
    }
    throw new RigError('timeout', 'The rig did not come back to safe. Disconnect the pack.');
  }
  /** A tripped rig may still run its safe order: it clears its trip only after that. */
  private async orderOver(endMs: number): Promise<void> {
    if (this.current.kind !== 'tripped' || !this.beats.beating) return;
    this.beats.stop();
    await new Promise<void>((done) => this.clock.after(Math.min(2500, endMs - this.clock.now()), done));
  }
  private take(message: Message): void {
    if (this.queue.take(message)) return;
    switch (message.type) {
      case 'scanBlock':
        this.beats.lastScan = message.scan;
        this.noticeTrip(message);
        return this.blocks.tell(message);
      case 'burstBlock':
        return this.bursts.tell(message);
      case 'beatBack':
        return this.beats.answer(message);
      case 'state':
        return this.observe(message);
      case 'event':
        this.noticeRestart(message);
        return this.events.tell(message);
    }
  }
  private observe(message: AnswerTo<'state'>): void {
    const { kind } = this.current;
    if (!this.known || kind === 'connecting' || kind === 'lost' || kind === 'none') return;
    if (message.state === stateCode.tripped) this.trip(tripReport(message, this.rig));
    else if (message.state === stateCode.ending && kind === 'live') this.enter({ kind: 'ending' });
    else if (message.state === stateCode.safe && (kind === 'ending' || kind === 'live'))
      this.enter({ kind: 'ready' });
  }
  /** The stream tells trips too, should the report itself be lost. */
  private noticeTrip({ state, trip, tick }: AnswerTo<'scanBlock'>): void {
    const { kind } = this.current;
    if (state === stateCode.tripped && (kind === 'live' || kind === 'ending'))
      this.trip(bareTrip(trip, tick));
  }
  private noticeRestart({ kind, tick, value }: AnswerTo<'event'>): void {
    const before = this.current.kind;
    if (kind !== eventCode.restarted || (before !== 'ready' && before !== 'live' && before !== 'ending'))
      return;
    this.trip(restartReport(value, tick));
  }
  private trip(trip: TripReport): void {
    const { current } = this;
    if (current.kind === 'tripped' && (trip.tap === null || current.trip.tap !== null)) return;
    this.drives.clear();
    this.enter({ kind: 'tripped', trip });
  }
  private lose(): void {
    if (this.current.kind === 'none') return;
    this.beats.stop();
    this.drives.clear();
    this.enter({ kind: 'lost', words: linkLostWords });
    this.queue.close(new RigError('linkLost'));
  }
  private enter(state: SessionState): void {
    const { kind } = this.current;
    if (kind === state.kind && kind !== 'tripped') return;
    if (!mayFollow(kind, state.kind))
      throw new RangeError(`a session can't go from ${kind} to ${state.kind}`);
    this.current = state;
    this.states.tell(state);
  }
}
