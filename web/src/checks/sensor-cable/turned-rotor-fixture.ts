// SPDX-License-Identifier: MIT
// For tests: blocks of a rig whose three Hall lines are turned by hand, from lists of edge times. Thermistors read 25 C.
import type { RigDescription } from '#core/samples/rig-description';
import { scanBlock, testRig } from '#core/samples/scan-block-fixture';
import { ScanColumns } from '#core/samples/scan-columns';

const blockTicks = 8 * 1872;
export const blockS = blockTicks * 0.5e-6;
/** Times of all edges of each line, rising order. */
export type LineTimes = readonly [readonly number[], readonly number[], readonly number[]];

export interface Turning {
  readonly times: LineTimes;
  readonly untilS: number;
  /** Times at which all three lines were found alike. */
  readonly invalid?: readonly number[];
  /** Code of the motor thermistor at a time; 512 is 25 C. */
  readonly motorCode?: (timeS: number) => number;
  readonly lost?: (timeS: number) => boolean;
}
export function turnedRotor(turning: Turning, rig: RigDescription = testRig()): ScanColumns {
  const columns = new ScanColumns(rig);
  const { times, untilS, invalid = [], motorCode = () => 512, lost = () => false } = turning;
  for (let block = 0; block * blockS < untilS; block++) {
    const startS = block * blockS;
    if (lost(startS)) continue;
    const until = (list: readonly number[]) => list.filter((atS) => atS < startS + blockS).length;
    const [edgesA, edgesB, edgesC] = times.map(until);
    const counts = { edgesA, edgesB: edgesB & 0xff, edgesC: edgesC & 0xff, badHall: until(invalid) & 0xff };
    const mux = { 0: motorCode(startS), 1: 512, 2: 512, 3: 512 };
    columns.push(scanBlock({ scan: 8 * block, tick: block * blockTicks, ...counts, mux }));
  }
  return columns;
}
/** Even turning from `fromS` on, `turnS` an electrical turn: A rises, C falls, B rises, A falls, C rises, B falls. */
export function evenTurning(fromS: number, turns: number, turnS: number, share = [0.5, 0.5, 0.5]): LineTimes {
  const line = (rise: number, high: number) =>
    Array.from({ length: turns + 1 }, (_, k) => [k - 1 + rise, k - 1 + rise + high])
      .flat()
      .filter((turn) => turn >= 0 && turn < turns)
      .map((turn) => fromS + turn * turnS);
  const [a, b, c] = [0, 1 / 3, 2 / 3].map((rise, k) => line(rise, share[k]));
  return [a, b, c];
}
/** The same places passed the other way round. */
export const backwards = (times: LineTimes, fromS: number, toS: number): LineTimes =>
  times.map((list) => list.map((atS) => fromS + toS - atS).toReversed()) as unknown as LineTimes;
export const joined = (...parts: readonly LineTimes[]): LineTimes =>
  [0, 1, 2].map((line) =>
    parts.flatMap((part) => part[line]).toSorted((a, b) => a - b),
  ) as unknown as LineTimes;
