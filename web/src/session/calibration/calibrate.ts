// SPDX-License-Identifier: MIT
// A guided calibration from the first wiring to what the rig keeps: asks a person, takes points, draws lines, adopts
// those that make the uncertainty smaller, writes them to the rig. Each tap ends adopted, not adopted, refused or not
// reached, in words. However it ends, the rig is brought back to safe. It knows no screen.
import { adoption, withLine, type Tightness } from '#core/calibration/adoption';
import { CalibrationRefused } from '#core/calibration/calibration-refused';
import { feedOutcome, limitedFeedId } from '#core/calibration/limited-feed';
import {
  lineCalibration,
  type CalibrationLine,
  type CalibrationPoint,
} from '#core/calibration/line-calibration';
import { NotMeasurable, tapOf } from '#core/measurements/tap-reading';
import type { RigDescription, Store } from '#core/samples/rig-description';
import { RunBench } from '../bench.ts';
import type { RigSession } from '../rig-session.ts';
import { asRunStopped, RunStopped } from '../run-stopped.ts';
import { RunWaits } from '../run-waits.ts';
import { watchRun } from '../run-watch.ts';
import type { CalibrationWish } from './calibration-wish.ts';
import { circuits, currentPoints } from './current-points.ts';
import { feedLine } from './feed-line.ts';
import { tapWords } from '#core/samples/tap-titles';
import { thermistorLines } from './thermistor-means.ts';
import { voltagePoints, voltageTaps, type PointsByTap } from './voltage-points.ts';

export interface TapOutcome {
  readonly tap: string;
  readonly state: 'adopted' | 'not adopted' | 'refused' | 'not reached';
  readonly words: string;
  readonly line?: CalibrationLine;
  readonly points: readonly CalibrationPoint[];
  readonly tightness: readonly Tightness[];
}
export interface CalibrationReport {
  readonly outcomes: readonly TapOutcome[];
  /** True when the rig keeps what was adopted, read back and compared. */
  readonly stored: boolean;
  /** How it ended, in words. */
  readonly words: string;
  /** Why it broke off, if it did; what was adopted before is stored unless the link is lost. */
  readonly stopped?: RunStopped;
}
const isThermistor = (rig: RigDescription, id: string) =>
  rig.descriptor.taps.some((tap) => tap.id === id && tap.quantity === 'temperature');
/** Everything that a guided calibration can do on this rig. */
export const calibratable = (rig: RigDescription): string[] => [
  ...rig.descriptor.taps
    .map(({ id }) => id)
    .filter(
      (id) =>
        voltageTaps.some((known) => known === id) ||
        circuits.some(({ taps }) => taps.includes(id)) ||
        isThermistor(rig, id),
    ),
  limitedFeedId,
];

export async function calibrate(session: RigSession, wish: CalibrationWish): Promise<CalibrationReport> {
  const guide = new Guide(session, wish);
  const stopped = await guide.all();
  const { outcomes, counted } = guide;
  const adopted = outcomes.flatMap(({ state, line }) => (state === 'adopted' && line ? [line] : []));
  if (adopted.length === 0) return { outcomes, stored: false, words: nothing(stopped), stopped };
  if (stopped?.kind === 'link lost') return { outcomes, stored: false, words: stopped.message, stopped };
  try {
    await session.keep(newStore(session, adopted));
  } catch (thrown) {
    const failed = asRunStopped(thrown);
    return { outcomes, stored: false, words: wordsOf(thrown), stopped: stopped ?? failed };
  }
  const names = adopted.map(({ tap }) => tap).join(', ');
  const kept = counted.store?.calibration.length ?? 0;
  const words = `The rig keeps the calibration of ${names}, read back and compared (${kept} in all).`;
  return { outcomes, stored: true, words: stopped ? `${stopped.message} ${words}` : words, stopped };
}
const nothing = (stopped: RunStopped | undefined): string =>
  `${stopped ? `${stopped.message} ` : ''}Nothing was adopted; what the rig keeps is unchanged.`;
const wordsOf = (thrown: unknown): string => (thrown instanceof Error ? thrown.message : String(thrown));

/** A rig without a number gets one now, so that its later runs are known to be its own. */
function newStore(session: RigSession, lines: readonly CalibrationLine[]): Store {
  const { serial = '', name = '', calibration = [] } = session.keptStore ?? {};
  const others = calibration.filter(({ tap }) => !lines.some((line) => line.tap === tap));
  return { serial: serial || session.freshNumber(), name, calibration: [...others, ...lines] };
}
class Guide {
  readonly outcomes: TapOutcome[] = [];
  /** The rig as it counts with what was adopted so far. */
  counted: RigDescription;

  constructor(
    private readonly session: RigSession,
    private readonly wish: CalibrationWish,
  ) {
    this.counted = { descriptor: session.rig.descriptor, store: session.rig.store };
  }
  /** In an order that asks for each wiring once. Undefined when it came to its end. */
  async all(): Promise<RunStopped | undefined> {
    const { wish } = this;
    const among = (ids: readonly string[]) => wish.taps.filter((id) => ids.includes(id));
    const warm = wish.taps.filter((id) => isThermistor(this.counted, id));
    try {
      await this.linear(among(voltageTaps), (bench, taps) => voltagePoints(bench, wish, taps));
      await this.thermistors(warm);
      for (const circuit of circuits)
        await this.linear(among(circuit.taps), (bench, taps) => currentPoints(bench, wish, circuit, taps));
      if (wish.taps.includes(limitedFeedId)) await this.feed();
      return undefined;
    } catch (thrown) {
      const stopped = asRunStopped(thrown);
      this.miss(wish.taps, 'not reached', stopped.message);
      return stopped;
    }
  }
  private async linear(
    taps: readonly string[],
    take: (bench: RunBench, taps: readonly string[]) => Promise<PointsByTap>,
  ): Promise<void> {
    if (taps.length === 0) return;
    const points = await this.phase(taps, (bench) => take(bench, taps));
    for (const [id, list] of points ?? [])
      this.judge(id, list, () =>
        lineCalibration(this.counted.descriptor, tapOf(this.counted, id), list, this.label('meter')),
      );
  }
  private async thermistors(taps: readonly string[]): Promise<void> {
    if (taps.length === 0) return;
    const lines = await this.phase(taps, (bench) => thermistorLines(bench, { ...this.wish, taps }));
    for (const line of lines ?? []) this.judge(line.tap, [], () => line);
  }
  private async feed(): Promise<void> {
    const line = await this.phase([limitedFeedId], (bench) => feedLine(bench, this.wish, this.counted));
    if (!line) return;
    const { adopted, words } = feedOutcome(this.counted.descriptor.limitedFeedOhm, line);
    this.settle({
      tap: limitedFeedId,
      state: adopted ? 'adopted' : 'not adopted',
      words,
      line,
      points: [],
      tightness: [],
    });
  }
  private label = (origin: string) => ({ date: this.wish.today, origin });

  private judge(id: string, points: readonly CalibrationPoint[], draw: () => CalibrationLine): void {
    try {
      const line = draw();
      const { adopted, tightness, words } = adoption(this.counted, tapOf(this.counted, id), line);
      this.settle({ tap: id, state: adopted ? 'adopted' : 'not adopted', words, line, points, tightness });
    } catch (error) {
      if (!(error instanceof CalibrationRefused)) throw error;
      this.settle({ tap: id, state: 'refused', words: error.message, points, tightness: [] });
    }
  }
  private settle(outcome: TapOutcome): void {
    this.outcomes.push(outcome);
    if (outcome.state === 'adopted' && outcome.line) this.counted = withLine(this.counted, outcome.line);
  }
  private miss(taps: readonly string[], state: 'refused' | 'not reached', words: string): void {
    const left = taps.filter((id) => !this.outcomes.some(({ tap }) => tap === id));
    for (const tap of left)
      this.outcomes.push({ tap, state, words: `${tapWords(tap)}: ${words}`, points: [], tightness: [] });
  }
  /** One wiring. Null when what was read in it can't be used; all its taps then say why. */
  private async phase<T>(taps: readonly string[], work: (bench: RunBench) => Promise<T>): Promise<T | null> {
    const { session, wish } = this;
    const waits = new RunWaits();
    const bench = new RunBench(session, waits, {
      car: wish.car,
      taps: [],
      ask: (words) => wish.hands.act({ words, after: 'live', taps: [] }),
      progress: wish.progress ?? (() => {}),
    });
    const unwatch = watchRun(session, waits, wish.signal);
    try {
      return await work(bench);
    } catch (error) {
      if (!(error instanceof CalibrationRefused || error instanceof NotMeasurable)) throw error;
      this.miss(taps, 'refused', error.message);
      return null;
    } finally {
      unwatch();
      bench.close();
      await session.end();
    }
  }
}
