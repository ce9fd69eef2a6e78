// SPDX-License-Identifier: MIT
// What each mark brings and costs, and which one to take: from mark to mark, speed gained against current spent. Pure.
import type { Quantity } from '#core/measurements/quantity';

export interface MarkFigures {
  readonly degrees: number;
  readonly kv: Quantity;
  readonly currentA: Quantity;
  readonly canC: number;
}
/** Speed that a step must bring, per cent for each per cent of current; less is heat for nothing. From memory. */
export const leastGain = 0.1;

/** Per cent of speed for each per cent of current, from one mark to the next. */
export function gainOf(from: MarkFigures, to: MarkFigures): number {
  const speed = to.kv.value / from.kv.value - 1;
  const current = to.currentA.value / from.currentA.value - 1;
  return current <= 0 ? Number.POSITIVE_INFINITY : speed / current;
}
/** The most advanced mark that each step up to it was worth; marks in rising order. */
export function proposed(marks: readonly MarkFigures[]): MarkFigures {
  const stop = marks.findIndex((mark, k) => k > 0 && gainOf(marks[k - 1], mark) < leastGain);
  return marks[stop < 0 ? marks.length - 1 : stop - 1];
}
/** "30 degrees: 2,950 rpm/V, 3.1 A, can 34 C; from 20 degrees 5.1 % speed for 12 % current". */
export function tradeWords(marks: readonly MarkFigures[]): string[] {
  return marks.map((mark, k) => {
    const { degrees, kv, currentA, canC } = mark;
    const figures = `${degrees} degrees: ${kv.value.toFixed(0)} rpm/V, ${currentA.value.toFixed(2)} A, can ${canC.toFixed(0)} °C`;
    if (k === 0) return figures;
    const before = marks[k - 1];
    const share = (to: Quantity, from: Quantity) => `${(100 * (to.value / from.value - 1)).toFixed(1)} %`;
    return `${figures}; from ${before.degrees} degrees ${share(kv, before.kv)} speed for ${share(currentA, before.currentA)} current`;
  });
}
