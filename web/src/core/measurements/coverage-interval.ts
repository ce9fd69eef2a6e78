// SPDX-License-Identifier: MIT
// The 95 % interval of a sum of independent errors after JCGM 101:2008: their distributions are propagated, by
// numeric convolution on a grid instead of by drawing numbers, so that the same lines give the same interval.
// All shapes are symmetric, so half a distribution's width says it all. It knows budget lines only.
import jstat from 'jstat';
import type { BudgetLine } from './measurement.ts';

type Line = Pick<BudgetLine, 'u' | 'shape' | 'dof'>;
/** Cells from one end of the grid to the other; odd, so that one cell is centred on zero. */
const cells = 1201;
const manyDof = 200;

/** Half-width of the probabilistically symmetric interval that covers `probability` (JCGM 101, 5.3.4 and 7.7). */
export function halfWidth(lines: readonly Line[], probability = 0.95): number {
  const active = significant(lines);
  if (active.length === 0) return 0;
  const normalU = Math.hypot(...active.filter(isNormal).map((line) => line.u));
  const others = active.filter((line) => !isNormal(line));
  const gridU = reach(normalU, others);
  const step = (2 * gridU) / cells;
  let mass = normalMass(normalU, step);
  for (const line of others)
    mass = line.shape === 'rectangular' ? boxed(mass, line.u, step) : studentMixed(mass, line, step);
  return quantile(mass, step, probability);
}
/** Chance that the error lies above `distance`; the same propagation, for the decision rule. A value without any error
 *  (a count) that stands at the distance itself is not above it. */
export function chanceBeyond(lines: readonly Line[], distance: number): number {
  const active = significant(lines);
  if (active.length === 0) return distance < 0 ? 1 : 0;
  const half = solveChance(active, Math.abs(distance));
  return distance >= 0 ? half : 1 - half;
}
function solveChance(lines: readonly Line[], distance: number): number {
  const u = Math.hypot(...lines.map((line) => line.u));
  if (distance > 12 * u) return 0;
  let low = 0;
  let high = 1;
  for (let i = 0; i < 22; i++) {
    const middle = (low + high) / 2;
    if (halfWidth(lines, middle) < distance) low = middle;
    else high = middle;
  }
  return (1 - (low + high) / 2) / 2;
}
function significant(lines: readonly Line[]): Line[] {
  const u = Math.hypot(...lines.map((line) => line.u));
  return lines.filter((line) => line.u > u * 1e-4);
}
const isNormal = (line: Line) => line.shape === 'normal' || (line.shape === 'student' && line.dof > manyDof);

/** Far enough out that what is cut off doesn't move a 95 % bound. */
function reach(normalU: number, others: readonly Line[]): number {
  const ends = others.map((line) =>
    line.shape === 'rectangular' ? line.u * Math.sqrt(3) : line.u * jstat.studentt.inv(0.9995, line.dof),
  );
  const straight = 5 * normalU + ends.reduce((sum, end) => sum + end, 0);
  const round =
    8 * Math.hypot(normalU, ...others.filter((line) => line.shape === 'rectangular').map((line) => line.u));
  const tails = others
    .filter((line) => line.shape === 'student')
    .map((line) => line.u * jstat.studentt.inv(0.9995, line.dof));
  return Math.min(straight, round + tails.reduce((sum, tail) => sum + tail, 0)) * 1.02;
}
const centre = (cells - 1) / 2;

function normalMass(u: number, step: number): Float64Array {
  const mass = new Float64Array(cells);
  if (u < step / 10) mass[centre] = 1;
  else {
    const below = (edge: number) => jstat.normal.cdf(edge * step, 0, u);
    for (let k = 0; k < cells; k++) mass[k] = below(k - centre + 0.5) - below(k - centre - 0.5);
  }
  return mass;
}
/** Convolution with a rectangle, exact for the cumulative sum between cells. */
function boxed(mass: Float64Array, u: number, step: number): Float64Array {
  const halfCells = (u * Math.sqrt(3)) / step;
  const sums = new Float64Array(cells + 1);
  for (let k = 0; k < cells; k++) sums[k + 1] = sums[k] + mass[k];
  const upTo = (edge: number) => {
    const at = Math.min(Math.max(edge, 0), cells);
    const whole = Math.min(Math.floor(at), cells - 1);
    return sums[whole] + (at - whole) * mass[whole];
  };
  return Float64Array.from({ length: cells }, (_, k) => {
    if (halfCells < 0.05) return mass[k];
    return (upTo(k + 0.5 + halfCells) - upTo(k + 0.5 - halfCells)) / (2 * halfCells);
  });
}
/** Convolution with a scaled and shifted t distribution (JCGM 101, 6.4.9). */
function studentMixed(mass: Float64Array, line: Line, step: number): Float64Array {
  const below = (edge: number) => jstat.studentt.cdf((edge * step) / line.u, line.dof);
  const kernel = Float64Array.from(
    { length: cells },
    (_, k) => below(k - centre + 0.5) - below(k - centre - 0.5),
  );
  const mixed = new Float64Array(cells);
  for (let i = 0; i < cells; i++) {
    if (mass[i] < 1e-12) continue;
    const from = Math.max(0, i - centre);
    const to = Math.min(cells, i + centre + 1);
    for (let k = from; k < to; k++) mixed[k] += mass[i] * kernel[k - i + centre];
  }
  return mixed;
}
/** Distance from zero within which `probability` lies; mass cut off at the ends counts as outside. */
function quantile(mass: Float64Array, step: number, probability: number): number {
  let inside = mass[centre];
  if (inside >= probability) return (step / 2) * (probability / inside);
  for (let k = 1; k <= centre; k++) {
    const more = mass[centre + k] + mass[centre - k];
    if (inside + more >= probability) return step * (k - 0.5 + (probability - inside) / more);
    inside += more;
  }
  return centre * step;
}
