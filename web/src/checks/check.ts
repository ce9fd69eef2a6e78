// SPDX-License-Identifier: MIT
// What a check is, declared as data before it runs, and the bench it is given to run on.
// A check's procedure only commands and marks; its analysis is pure and can be repeated from a record.
import type { z } from 'zod';
import type { Finding } from '#core/measurements/measurement';
import type { Limit } from '#core/verdicts/limit';
import type { Car, PartKind } from '#core/parts/part';
import type { ClockFit, SampleStore } from '#core/samples/sample-store';
import type { RigDescription } from '#core/samples/rig-description';
import type { Proposal } from './proposal.ts';
import type { NumberWanted } from '#core/units/asked-number';

export type { NumberWanted, PartKind };
/** One thing to plug, in the order a person does it. `tap` (if any) is seen live once it is right. */
export interface WiringStep {
  readonly words: string;
  readonly tap?: string;
}
export interface Needs {
  readonly taps: readonly string[];
  readonly outputs: readonly string[];
}
/** Four tap ids converted twice a scan in the order a b b a c d d c, and one slow slot. */
export interface ScanPlan {
  readonly fast: readonly [string, string, string, string];
  /** A tap id, or 'multiplexer' to step through all its inputs. */
  readonly slow: string;
}
export interface BurstPlan {
  readonly tap: string;
  readonly samples: number;
  readonly action:
    | { readonly kind: 'none' }
    | { readonly kind: 'load'; readonly mask: number; readonly ms: number }
    | { readonly kind: 'steering' | 'throttle'; readonly widthUs: number; readonly ms: number };
  readonly atSample: number;
}
/** Every conversion of one tap, 104 us apart; the marked action fired at sample `actionSample`. */
export interface BurstRecord {
  readonly tap: string;
  readonly startS: number;
  readonly intervalS: number;
  readonly actionSample: number | null;
  /** Raw codes 0..1023; a lost block is a run of NaN. */
  readonly codes: Float64Array;
}
export interface Progress {
  readonly step: number;
  readonly of: number;
  /** What is happening now, in plain words. */
  readonly words: string;
  readonly leftS: number;
}
/** How far a power-up goes: live with all off, through the limited feed alone, full feed, rail up, neutral run in. */
export type PowerStage = 'live' | 'limited' | 'full' | 'rail' | 'neutral';
/** What a procedure may do. All times are rig time. Every promise rejects with RunStopped on stop, trip or a lost link. */
export interface Bench {
  readonly rig: RigDescription;
  readonly car: Car;
  /** Everything streamed since the run began; grows while the run goes on. */
  readonly samples: SampleStore;
  /** Seconds of rig time since the run began. */
  now(): number;
  wait(seconds: number): Promise<void>;
  /** Resolves true once `seen` holds (asked at every block), false after `timeoutS`. */
  waitFor(seen: (samples: SampleStore) => boolean, timeoutS: number): Promise<boolean>;
  scan(plan: ScanPlan): Promise<void>;
  /** Streams without going live: nothing is switched on, nothing moves. */
  stream(plan: ScanPlan): Promise<void>;
  /** Scans, zero-trims, proves the stop line, goes live, limited feed, charge, full feed, neutral for 3 s; as far as `upTo`. */
  powerUp(plan: ScanPlan, upTo?: PowerStage): Promise<void>;
  /** Refused by the rig where it is not allowed; 'full' only after 'limited' has filled the capacitor. */
  feed(level: 'off' | 'limited' | 'full'): Promise<void>;
  /** Switched off by the rig itself after `seconds`; 0: stays until told (not the pack load). */
  turn(which: 'hallSupply' | 'bleeder' | 'packLoad', on: boolean, seconds?: number): Promise<void>;
  /** What the capture input listens to; its edges are those of `samples.edges`. */
  capture(source: 'hallA' | 'receiver1' | 'receiver2' | 'none'): Promise<void>;
  /** Servo frame period; above 60 Hz only for a servo declared digital. */
  frame(periodS: number, digital: boolean): Promise<void>;
  /** Steering limits of this session, beyond the usual 1100 to 1900 us. */
  steeringRange(lowUs: number, highUs: number): Promise<void>;
  /** -1 full brake over 0 neutral to 1 full, through the learnt widths; renewed by the session until the next call. The
   *  brake only once the motor is proven to turn. */
  throttle(fraction: number, rampS: number): Promise<void>;
  /** Pulse width at the steering output; renewed until the next call. */
  steer(widthUs: number, rampS: number): Promise<void>;
  load(mask: number, seconds: number): Promise<void>;
  burst(plan: BurstPlan): Promise<BurstRecord>;
  /** Throttle pulses stop on purpose; the time until the speed fell, or null when it did not. */
  failSafeTest(seconds: number): Promise<number | null>;
  limit(which: string, level: number, ms: number): Promise<void>;
  mark(label: string): void;
  progress(progress: Progress): void;
  /** Asks the person for a hand on the bench ("horn resting against the block"); resolves when done. */
  ask(words: string): Promise<void>;
  /** Asks for a figure that a person reads or sets; resolves with a number inside the bounds. */
  askNumber(words: string, wanted: NumberWanted): Promise<number>;
}
export interface AnalysisInput<Evidence> {
  readonly evidence: Evidence;
  readonly samples: SampleStore;
  readonly rig: RigDescription;
  readonly car: Car;
}
export interface Check<Evidence = unknown> {
  readonly id: string;
  readonly title: string;
  readonly part: PartKind;
  readonly why: string;
  readonly needs: Needs;
  readonly wiring: readonly WiringStep[];
  /** Sentences that the person affirms before going live. */
  readonly cautions: readonly string[];
  readonly durationS: number;
  /** What it does to the car, where that is not what checks of this part commonly do: "Nothing moves". */
  readonly moves?: string;
  /** Its failure bars the full feed for the session, until it passes. */
  readonly provesFeed?: boolean;
  /** Place in the chain that shows it, where that is not the part's own: 'rail', 'linkage', 'mesh' ... */
  readonly place?: string;
  /** Ids, titles and units of every result, so that a run that never came to measuring can list them. */
  readonly results: readonly { readonly id: string; readonly title: string; readonly unit: string }[];
  /** Results that a car has besides those, one for each thing of its own list: its joints. */
  more?(car: Car): readonly { readonly id: string; readonly title: string; readonly unit: string }[];
  readonly evidenceSchema: z.ZodType<Evidence>;
  procedure(bench: Bench): Promise<Evidence>;
  analyse(input: AnalysisInput<Evidence>): readonly Finding[];
  /** Limit for each result that has one. */
  limits(car: Car, rig: RigDescription): Readonly<Record<string, Limit>>;
  /** What the findings would change on a part, for the person to take over; null where they don't allow it. */
  proposes?(findings: readonly Finding[], clock: ClockFit): Proposal | null;
}
