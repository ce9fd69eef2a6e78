// SPDX-License-Identifier: MIT
// The bench a check's procedure is given: drives, loads, bursts and waits on one rig in one run. Time is rig time
// as the stream tells it. It knows no check; powering up stands in power-up.ts.
import {
  actionCode,
  captureSourceCode,
  eventCode,
  feedLevelCode,
  limitCode,
  reasonCode,
  switchCode,
} from '#protocol/codes';
import type {
  Bench,
  BurstPlan,
  BurstRecord,
  NumberWanted,
  PowerStage,
  Progress,
  ScanPlan,
} from '#checks/check';
import type { Car } from '#core/parts/part';
import type { RigDescription } from '#core/samples/rig-description';
import { ScanColumns } from '#core/samples/scan-columns';
import { BurstCollector } from './burst-collector.ts';
import type { AnswerTo, Command } from './command-queue.ts';
import { ticksOf } from './drive-keeper.ts';
import { limitSetting } from './limit-level.ts';
import { driveLimits, powerUp, startStream, steeringUs } from './power-up.ts';
import { RefusedError } from './rig-error.ts';
import type { RigSession } from './rig-session.ts';
import { RunStopped } from './run-stopped.ts';
import type { RunWaits } from './run-waits.ts';
import { channelOf, scanListOf } from './scan-list.ts';
import { creepTo } from './throttle-creep.ts';

/** Resolves when the person has done what the words ask; with the figure where one is wanted. */
export type Ask = (words: string, wanted?: NumberWanted) => Promise<number | void>;
export interface BenchOptions {
  readonly car: Car;
  /** Taps of the check: the thermistors among them are watched by the rig. */
  readonly taps: readonly string[];
  readonly ask: Ask;
  readonly progress: (progress: Progress) => void;
  /** This check is the one that a barred feed waits for. */
  readonly provesFeed?: boolean;
}
/** More than the rest of a burst's last block and its event need. */
const afterBurstS = 0.1;
/** The rig's own word for "never": a load that can't be taken in one go. */
const never = 65535;

export class RunBench implements Bench {
  readonly samples: ScanColumns;
  readonly car: Car;
  private burstTick: number | null = null;
  private edgesA = 0;
  private turning = false;
  private readonly ends: (() => void)[];

  constructor(
    readonly session: RigSession,
    private readonly waits: RunWaits,
    readonly options: BenchOptions,
  ) {
    this.samples = new ScanColumns(session.rig);
    this.car = options.car;
    this.ends = [
      session.blocks.add((block) => this.block(block)),
      session.bursts.add((burst) => this.burstCame(burst)),
    ];
  }
  get rig(): RigDescription {
    return this.session.rig;
  }
  /** Ends the listening; the samples stay as they are. */
  close(): void {
    this.ends.forEach((end) => end());
  }
  now(): number {
    const { latestS } = this.samples;
    return this.burstTick === null ? latestS : Math.max(latestS, this.samples.timeOfTick(this.burstTick));
  }
  wait(seconds: number): Promise<void> {
    const untilS = this.now() + seconds;
    return this.waits.until(() => this.now() >= untilS);
  }
  async waitFor(seen: (samples: ScanColumns) => boolean, timeoutS: number): Promise<boolean> {
    const untilS = this.now() + timeoutS;
    let found = false;
    await this.waits.until(() => (found = seen(this.samples)) || this.now() >= untilS);
    return found;
  }
  /** A command of this run: left at once when the run breaks off. */
  command(command: Command) {
    return this.waits.guard(() => this.session.ask(command));
  }
  guard<T>(work: () => Promise<T>): Promise<T> {
    return this.waits.guard(work);
  }
  async scan(plan: ScanPlan): Promise<void> {
    await this.command({ type: 'scanList', ...scanListOf(this.rig, plan) });
  }
  async stream(plan: ScanPlan): Promise<void> {
    await startStream(this);
    this.session.keepTime();
    await this.scan(plan);
  }
  async powerUp(plan: ScanPlan, upTo: PowerStage = 'neutral'): Promise<void> {
    this.turning = false;
    if (upTo !== 'live' && upTo !== 'limited') this.requireFeedAllowed();
    await powerUp(this, plan, upTo);
  }
  async feed(level: keyof typeof feedLevelCode): Promise<void> {
    // Without power the rig forgets that the motor was proven to turn.
    if (level === 'off') this.turning = false;
    if (level === 'full') this.requireFeedAllowed();
    await this.command({ type: 'feed', level: feedLevelCode[level] });
  }
  async turn(which: keyof typeof switchCode, on: boolean, seconds = 0): Promise<void> {
    const ms = Math.round(seconds * 1000);
    const command = { type: 'switch', which: switchCode[which], on: on ? 1 : 0, ms } as const;
    await this.onceCool(command, 'The pack load rests.');
  }
  async capture(source: keyof typeof captureSourceCode): Promise<void> {
    await this.command({ type: 'capture', source: captureSourceCode[source] });
  }
  async frame(periodS: number, digital: boolean): Promise<void> {
    await this.command({ type: 'frame', period: ticksOf(periodS * 1e6), digital: digital ? 1 : 0 });
  }
  steeringRange(lowUs: number, highUs: number): Promise<void> {
    return driveLimits(this, 0, { low: lowUs, rest: steeringUs.rest, high: highUs });
  }
  async throttle(fraction: number, rampS: number): Promise<void> {
    if (!(fraction >= -1 && fraction <= 1))
      throw new RangeError(`a throttle of ${fraction} is not within -1 to 1`);
    if (fraction > 0 && !this.turning) {
      this.turning = await creepTo(fraction, {
        drive: (at) => this.throttleNow(at, 0),
        wait: (seconds) => this.wait(seconds),
        waitFor: (seen, timeoutS) => this.waitFor(seen, timeoutS),
        edges: () => this.edgesA,
      });
      if (!this.turning) return;
    }
    await this.throttleNow(fraction, rampS);
    await this.wait(rampS);
  }
  async steer(widthUs: number, rampS: number): Promise<void> {
    await this.waits.guard(() => this.session.drives.drive('steering', widthUs, rampS));
    await this.wait(rampS);
  }
  /** Resolves when the load is on. */
  load(mask: number, seconds: number): Promise<void> {
    const ms = Math.round(seconds * 1000);
    return this.onceCool({ type: 'load', mask, ms }, 'The load bank cools down.');
  }
  /** Waits while the rig says that a load is too hot, then switches. */
  private async onceCool(command: Command, words: string): Promise<void> {
    for (;;) {
      try {
        await this.command(command);
        return;
      } catch (error) {
        const hot = error instanceof RefusedError && error.reason === reasonCode.loadHot;
        if (!hot || error.detail === never) throw error;
        const coolS = error.detail / 1000 + 0.1;
        this.progress({ step: 0, of: 0, words, leftS: coolS });
        await this.wait(coolS);
      }
    }
  }
  async burst(plan: BurstPlan): Promise<BurstRecord> {
    const collector = new BurstCollector(channelOf(this.rig, plan.tap), plan.samples);
    const ends = [
      this.session.bursts.add((block) => collector.push(block)),
      this.session.events.add((event) => collector.event(event)),
    ];
    const { kind } = plan.action;
    try {
      // The marked action is the drive of its output from now on: a renewal of the old one would undo it.
      if (kind === 'steering' || kind === 'throttle')
        await this.waits.guard(() => this.session.drives.handOver(kind));
      await this.command(burstCommand(collector.channel, plan));
      const intervalS = this.rig.descriptor.conversionTicks * this.rig.descriptor.tickS;
      await this.waitFor(() => collector.whole, plan.samples * intervalS + afterBurstS);
      await this.wait(afterBurstS);
      return this.recordOf(plan.tap, collector, intervalS);
    } finally {
      ends.forEach((end) => end());
    }
  }
  async failSafeTest(seconds: number): Promise<number | null> {
    let result: number | null = null;
    const end = this.session.events.add(({ kind, value }) => {
      if (kind === eventCode.failSafe) result = value;
    });
    try {
      this.session.drives.release('throttle');
      await this.command({ type: 'failSafeTest', ms: Math.round(seconds * 1000) });
      await this.waitFor(() => result !== null, seconds + 1);
    } finally {
      end();
    }
    if (result === null)
      throw new RunStopped(
        'failed',
        'The result of the fail-safe test never came. Check the cable and run again.',
      );
    return result === never ? null : result / 1000;
  }
  async limit(which: string, level: number, ms: number): Promise<void> {
    const { polePairs } = this.car.motor;
    const { volts } = this.samples.supply(0, this.samples.latestS);
    const setting = limitSetting(this.rig, which, level, polePairs, volts);
    const isFast = setting.which === limitCode.packWideFast;
    await this.command({ type: 'limit', ...setting, ms: isFast ? 0 : ms });
  }
  mark(label: string): void {
    this.samples.mark(label, this.now());
  }
  progress(progress: Progress): void {
    this.options.progress(progress);
  }
  async ask(words: string): Promise<void> {
    await this.waits.guard(() => this.options.ask(words));
  }
  async askNumber(words: string, wanted: NumberWanted): Promise<number> {
    const { unit, min, max } = wanted;
    const value = await this.waits.guard(() => this.options.ask(words, wanted));
    if (typeof value === 'number' && value >= min && value <= max) return value;
    throw new RunStopped(
      'failed',
      `"${words}" needs a number from ${min} to ${max} ${unit}${value === undefined ? '' : `, not ${value}`}. Run again and give one.`,
    );
  }
  private requireFeedAllowed(): void {
    const { session, options } = this;
    if (session.feedBarred && !options.provesFeed) throw new RunStopped('failed', session.feedBarred);
  }
  private throttleNow(fraction: number, rampS: number): Promise<void> {
    const { lowUs, neutralUs, highUs } = this.car.controller.throttle;
    const widthUs = neutralUs + fraction * (fraction < 0 ? neutralUs - lowUs : highUs - neutralUs);
    // At rest nothing needs renewing, and the rig allows there what it refuses while a drive runs.
    return this.waits.guard(() => this.session.drives.drive('throttle', widthUs, rampS, fraction !== 0));
  }
  private block(block: AnswerTo<'scanBlock'>): void {
    const before = this.samples.raw.length === 0 ? block.edgesA : this.lastEdgesA;
    this.edgesA += (block.edgesA - before) & 0xffff;
    this.lastEdgesA = block.edgesA;
    this.samples.push(block);
    this.waits.look();
  }
  private lastEdgesA = 0;
  private burstCame({ tick, samples }: AnswerTo<'burstBlock'>): void {
    this.burstTick = (tick + samples.length * this.rig.descriptor.conversionTicks) >>> 0;
    this.waits.look();
  }
  private recordOf(tap: string, collector: BurstCollector, intervalS: number): BurstRecord {
    const { startTick, actionSample, codes } = collector;
    if (startTick === null)
      throw new RunStopped('failed', `No sample of the burst on ${tap} came. Check the cable and run again.`);
    return { tap, startS: this.samples.timeOfTick(startTick), intervalS, actionSample, codes };
  }
}
function burstCommand(channel: number, { samples, action, atSample }: BurstPlan): Command {
  const { kind } = action;
  const actionArg = kind === 'none' ? 0 : kind === 'load' ? action.mask : ticksOf(action.widthUs);
  const actionMs = kind === 'none' ? 0 : action.ms;
  return { type: 'burst', channel, samples, action: actionCode[kind], actionArg, actionMs, atSample };
}
