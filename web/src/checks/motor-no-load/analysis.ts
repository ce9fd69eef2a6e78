// SPDX-License-Identifier: MIT
// motor-no-load: from steady stretches to no-load current, kV and speed at the label's voltage and 25 C. Pure.
// Part throttle: pack current is duty times motor current, so the motor's current comes from power,
//   V Id = R I^2 + Ke w I   with   Id = Ipack - Iidle   (Ipack itself would be wrong by its duty).
// At that voltage the current is read between the full and the 75 % step, straight in speed.
import { noLoadV } from '#core/limits/no-load-voltage';
import { combined, widened, type Quantity } from '#core/measurements/quantity';
import { guarded, measured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { rectangular, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, reading } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import { neutralCurrent, stepOf, type Step } from '../motor-step.ts';
import { requireProven } from '../proven-spin.ts';
import type { Evidence } from './evidence.ts';
import { canOf, magnetAbove25, seriesOf } from './winding.ts';

export const results = [
  { id: 'no-load-current', title: 'No-load current', unit: 'A' },
  { id: 'kv', title: 'kV', unit: 'rpm/V' },
  { id: 'no-load-speed', title: 'No-load speed', unit: 'rpm' },
] as const;
/** Magnet flux per kelvin, relative; from memory. */
const fluxPerK = 0.0011;
type Input = AnalysisInput<Evidence>;

export function analyse(input: Input): readonly Finding[] {
  return guarded(results, () => {
    requireRun(input.evidence);
    const at = noLoadAt(input);
    return [currentAt(at), kvAt(at), speedAt(at)];
  });
}
/** What the two upper steps and the neutral before them say of the motor. */
export function noLoadAt(input: AnalysisInput<Pick<Evidence, 'idle' | 'steps'>>): At {
  const idleA = neutralCurrent(input, input.evidence.idle);
  const [upper, full] = input.evidence.steps.slice(-2).map((step) => stepOf(input, step.stretch, idleA));
  const canC = canOf(input, full.stretch);
  const ohm = seriesOf(input, canC);
  const airC = reading(input, 'thermistorAmbient', full.stretch).value;
  const kv = kvOf(full, ohm);
  requirePolePairs(kv.value, input.car.motor.ratedKvRpmPerV);
  return { full, upper, ohm, kv, warmK: magnetAbove25(canC, airC), ratedV: noLoadV(input.car) };
}
function requireRun(evidence: Evidence): void {
  requireProven(evidence);
  if (evidence.steps.length < 4)
    throw new NotMeasurable('The run ended before the last throttle step. Run again.');
}
const kvOf = ({ volts, driveA, rpm }: Step, ohm: Quantity): Quantity =>
  combined([rpm, volts, driveA, ohm], (n, v, i, r) => n / (v - i * r));

function requirePolePairs(kv: number, rated: number): void {
  const factor = kv / rated;
  const near = [2, 0.5].some((wrong) => Math.abs(factor / wrong - 1) < 0.25);
  if (near)
    throw new NotMeasurable(
      `kV comes out as ${factor.toFixed(2)} times the label: the pole pairs of this motor are probably entered wrongly. Correct them on the part, then run again.`,
    );
}
/** Share of the current by which the line is too high midway between 75 % and full speed, at most (computed for an
 *  eighth of the drag growing with the square of speed; a bare motor drives no fan). */
const mostBent = 0.002;
export interface At {
  readonly full: Step;
  readonly upper: Step;
  readonly ohm: Quantity;
  readonly kv: Quantity;
  readonly warmK: Quantity;
  /** What current and speed are told at. */
  readonly ratedV: number;
}
/** Motor current from power: the positive root of R I^2 + (n/kv) I - V Id = 0. */
export function motorCurrent(volts: number, driveA: number, rpm: number, ohm: number, kv: number): number {
  const backV = rpm / kv;
  return (-backV + Math.sqrt(backV ** 2 + 4 * ohm * volts * driveA)) / (2 * ohm);
}
/** Speed at that voltage and 25 C; the drop over the resistance nearly cancels between the two voltages. */
function ratedSpeed({ full, ohm, kv, warmK, ratedV }: At): Quantity {
  return combined([full.driveA, ohm, kv, warmK], (i, r, k, warm) => k * cold(warm) * (ratedV - i * r));
}
const cold = (warmK: number): number => 1 - fluxPerK * warmK;

export function ratedCurrent(at: At): Quantity {
  const { full, upper, ohm, kv, warmK } = at;
  const speed = ratedSpeed(at);
  const partA = combined([upper.volts, upper.driveA, upper.rpm, ohm, kv], motorCurrent);
  const straight = combined(
    [full.driveA, partA, full.rpm, upper.rpm, speed, warmK],
    (iFull, iPart, nFull, nPart, n, warm) =>
      cold(warm) * (iFull + ((iPart - iFull) * (n - nFull)) / (nPart - nFull)),
  );
  const between = { low: upper.rpm.value, high: full.rpm.value };
  const bentA = bentShare(between, speed.value) * straight.value;
  return widened({ ...straight, value: straight.value - bentA }, curve, rectangular(Math.abs(bentA)));
}
const curve = typeB(
  'curve',
  'current taken straight between two speeds',
  'computed: a little drag grows with speed squared',
);
/** Drag with the square of speed lies below the line between two speeds by c (n - n1)(n2 - n), and above it beyond
 *  them. From none to the most of it is possible, so half of it is taken away and may be wrong by itself. */
export function bentShare({ low, high }: { low: number; high: number }, rpm: number): number {
  const middle = ((high - low) / 2) ** 2;
  return ((mostBent / 2) * (rpm - low) * (high - rpm)) / middle;
}
const titled = (k: 0 | 2, { ratedV }: At) => ({ ...results[k], title: `${results[k].title} at ${ratedV} V` });
const evidenceOf = ({ full, upper }: At, taps: string[]) => [
  { ...full.stretch, taps },
  { ...upper.stretch, taps },
];
function currentAt(at: At): Finding {
  return measured(titled(0, at), ratedCurrent(at), {
    condition: `${at.ratedV} V`,
    formula: `Pack current at full throttle less the current at neutral, taken to the speed at ${at.ratedV} V along the line to the 75 % step, and to 25 °C by the flux of the magnet.`,
    evidence: evidenceOf(at, ['packCurrentNarrow', 'controllerVoltage']),
  });
}
export const coldKv = ({ kv, warmK }: At): Quantity => combined([kv, warmK], (n, warm) => n * cold(warm));
function kvAt(at: At): Finding {
  return measured(results[1], coldKv(at), {
    formula:
      'Speed at full throttle over (voltage less current times resistance), taken to 25 °C by the flux of the magnet.',
    evidence: evidenceOf(at, ['controllerVoltage', 'packCurrentNarrow']).slice(0, 1),
  });
}
function speedAt(at: At): Finding {
  return measured(titled(2, at), ratedSpeed(at), {
    condition: `${at.ratedV} V`,
    formula: `kV at 25 °C times (${at.ratedV} V less no-load current times resistance).`,
    evidence: evidenceOf(at, ['controllerVoltage', 'packCurrentNarrow']).slice(0, 1),
  });
}
