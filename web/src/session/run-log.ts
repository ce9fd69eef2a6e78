// SPDX-License-Identifier: MIT
// What happened in a run besides its samples: events of the rig and of the session with their rig time, in words.
// It judges nothing.
import { codeName, codeWords, eventCode, tripWords } from '#protocol/codes';
import type { RunBench } from './bench.ts';
import type { AnswerTo } from './command-queue.ts';

export interface LoggedEvent {
  readonly atS: number;
  readonly kind: string;
  readonly words: string;
}
export class RunLog {
  readonly events: LoggedEvent[] = [];
  private readonly ends: (() => void)[];

  constructor(private readonly bench: RunBench) {
    const { session } = bench;
    this.ends = [
      session.events.add((event) => this.rigEvent(event)),
      session.states.add((state) => this.note('state', state.kind)),
    ];
  }
  note(kind: string, words: string, atS = this.bench.now()): void {
    this.events.push({ atS, kind, words });
  }
  close(): void {
    this.ends.forEach((end) => end());
  }
  private rigEvent(event: AnswerTo<'event'>): void {
    const kind = codeName('event', event.kind) ?? `event ${event.kind}`;
    this.note(kind, wordsOf(event), this.bench.samples.timeOfTick(event.tick));
  }
}
function wordsOf({ kind, value }: AnswerTo<'event'>): string {
  switch (kind) {
    case eventCode.trip:
      return tripWords(value);
    case eventCode.feed:
      return codeWords('feedLevel', value);
    case eventCode.restarted:
      return `the rig restarted: ${codeWords('resetCause', value)}`;
    case eventCode.driveEnded:
      return `the drive of the ${codeWords('output', value)} ended by itself`;
    case eventCode.failSafe:
      return value === 65535
        ? 'the motor did not slow without pulses'
        : `the motor slowed after ${value} ms without pulses`;
    case eventCode.firstPower:
      return `the limited feed filled the capacitor in ${value} ms`;
    case eventCode.action:
      return `the marked action fired at sample ${value}`;
    default:
      return codeWords('event', kind);
  }
}
