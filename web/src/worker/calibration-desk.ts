// SPDX-License-Identifier: MIT
// One guided calibration at a time: hands the wish to the session, passes its questions, points and ending to the page.
// It draws no line and judges nothing.
import { calibrate } from '#session/calibration/calibrate';
import type { CalibrationHands } from '#session/calibration/calibration-hands';
import type { RigSession } from '#session/rig-session';
import { RunStopped } from '#session/run-stopped';
import type { CalibrationAsk, CalibrationWish } from './calibration-messages.ts';
import type { FromBench } from './messages.ts';

export class CalibrationDesk {
  private stopper: AbortController | null = null;
  private answers = new Map<number, (value: number) => void>();
  private asked = 0;

  constructor(private readonly tell: (message: FromBench) => void) {}

  get running(): boolean {
    return this.stopper !== null;
  }
  async run(session: RigSession, wish: CalibrationWish): Promise<void> {
    this.stopper = new AbortController();
    try {
      const { outcomes, stored, words } = await calibrate(session, {
        ...wish,
        hands: this.hands,
        took: (tap, point) =>
          this.tell({ kind: 'calibrationPoint', tap, point: { ...point, shared: [...point.shared] } }),
        progress: ({ words: told }) => this.tell({ kind: 'calibrationDoing', words: told }),
        signal: this.stopper.signal,
      });
      const told = outcomes.map(({ tap, state, words: why, line, points, tightness }) => ({
        tap,
        state,
        words: why,
        line,
        points: points.map((point) => ({ ...point, shared: [...point.shared] })),
        tightness: [...tightness],
      }));
      this.tell({ kind: 'calibrationEnded', outcomes: told, stored, words });
    } finally {
      this.stopper = null;
      this.answers.clear();
    }
  }
  /** Without words it was a hand's. */
  stop(words?: string): void {
    this.stopper?.abort(words === undefined ? undefined : new RunStopped('stopped', words));
  }
  answer(askId: number, value: number | null): void {
    this.answers.get(askId)?.(value ?? Number.NaN);
    this.answers.delete(askId);
  }
  private readonly hands: CalibrationHands = {
    act: async (question) => void (await this.ask({ kind: 'act', ...question, taps: [...question.taps] })),
    read: (question) => this.ask({ kind: 'read', ...question, taps: [...question.taps] }),
  };
  private ask(ask: CalibrationAsk): Promise<number> {
    const askId = (this.asked += 1);
    this.tell({ kind: 'calibrationAsk', askId, ask });
    return new Promise((resolve) => this.answers.set(askId, resolve));
  }
}
