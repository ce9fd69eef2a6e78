// SPDX-License-Identifier: MIT
// A value with its uncertainty kept by named source, so that one reference behind volts and amperes adds with
// its sign and x - x has none. Law of propagation of JCGM 100:2008, 5.1.2 and, through the shared sources,
// its correlated form 5.2.2. It knows no taps, checks or limits.
import type { BudgetLine } from './measurement.ts';

/** Where an error comes from. The same `id` in two quantities is the same error. */
export interface Source {
  readonly id: string;
  readonly words: string;
  readonly shape: BudgetLine['shape'];
  readonly dof: number;
  readonly origin: string;
}
interface Term {
  readonly source: Source;
  /** Sensitivity times standard uncertainty, signed, in the quantity's unit. */
  readonly cu: number;
}
export interface Quantity {
  readonly value: number;
  readonly terms: ReadonlyMap<string, Term>;
}
export const exact = (value: number): Quantity => ({ value, terms: new Map() });

export function uncertain(value: number, lines: readonly (readonly [source: Source, u: number])[]): Quantity {
  return { value, terms: new Map(lines.map(([source, u]) => [source.id, { source, cu: u }])) };
}
/** y = f(x1, x2, ...) with the sensitivities taken over one standard uncertainty each (5.1.3, note 2). */
export function combined(inputs: readonly Quantity[], f: (...x: number[]) => number): Quantity {
  const at = inputs.map((input) => input.value);
  const sum = new Map<string, Term>();
  inputs.forEach((input, i) => addTerms(sum, input, slope(f, at, i, standardU(input))));
  return { value: f(...at), terms: sum };
}
/** Sum of c_i x_i with known sensitivities. */
export function linear(parts: readonly (readonly [c: number, x: Quantity])[], value?: number): Quantity {
  const sum = new Map<string, Term>();
  for (const [c, x] of parts) addTerms(sum, x, c);
  return { value: value ?? parts.reduce((total, [c, x]) => total + c * x.value, 0), terms: sum };
}
export const difference = (a: Quantity, b: Quantity): Quantity =>
  linear([
    [1, a],
    [-1, b],
  ]);
/** The same quantity with one more error, independent of all others. */
export const widened = (x: Quantity, source: Source, u: number): Quantity =>
  linear([
    [1, x],
    [1, uncertain(0, [[source, u]])],
  ]);

/** Combined standard uncertainty u_c: root of the sum of squares over independent sources. */
export function standardU(x: Quantity): number {
  return Math.hypot(...Array.from(x.terms.values(), (term) => term.cu));
}
/** Correlation coefficient of two quantities that share sources (5.2.2). */
export function correlation(x: Quantity, y: Quantity): number {
  let shared = 0;
  for (const [id, term] of x.terms) shared += term.cu * (y.terms.get(id)?.cu ?? 0);
  return shared / (standardU(x) * standardU(y));
}
/** Effective degrees of freedom, Welch-Satterthwaite (JCGM 100:2008, G.4.1). */
export function effectiveDof(x: Quantity): number {
  const u = standardU(x);
  const sum = Array.from(x.terms.values()).reduce((total, { source, cu }) => total + cu ** 4 / source.dof, 0);
  return sum === 0 ? Number.POSITIVE_INFINITY : u ** 4 / sum;
}
/** Lines of the budget, the largest first; lines below a thousandth of the whole are left out. */
export function budgetOf(x: Quantity): BudgetLine[] {
  const least = standardU(x) / 1000;
  return Array.from(x.terms.values())
    .filter(({ cu }) => Math.abs(cu) > least)
    .map(({ source, cu }) => ({
      source: source.words,
      u: Math.abs(cu),
      shape: source.shape,
      dof: source.dof,
      origin: source.origin,
    }))
    .toSorted((a, b) => b.u - a.u);
}
function addTerms(sum: Map<string, Term>, x: Quantity, c: number): void {
  for (const [id, { source, cu }] of x.terms) sum.set(id, { source, cu: (sum.get(id)?.cu ?? 0) + c * cu });
}
function slope(f: (...x: number[]) => number, at: readonly number[], i: number, u: number): number {
  const step = Math.max(u, Math.abs(at[i]) * 1e-7, 1e-12);
  const moved = (by: number) => f(...at.map((x, k) => (k === i ? x + by : x)));
  return (moved(step) - moved(-step)) / (2 * step);
}
