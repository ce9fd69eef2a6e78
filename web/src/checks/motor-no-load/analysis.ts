// SPDX-License-Identifier: MIT
// motor-no-load: from steady stretches to no-load current, kV and speed at the label's voltage and 25 C. Pure.
// Part throttle: pack current is duty times motor current, so the motor's current comes from power,
//   V Id = R I^2 + Ke w I   with   Id = Ipack - Iidle   (Ipack itself would be wrong by its duty).
// At that voltage the current is read between the full and the 75 % step, straight in speed.
import { noLoadV } from '#core/limits/no-load-voltage';
import { combined, exact, linear, uncertain, widened, type Quantity } from '#core/measurements/quantity';
import { guarded, measured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { clockLine, rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, reading, trimmedReading, zeroOf } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import type { Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';
import { failSafeMaxS } from './procedure.ts';
import { canOf, magnetAbove25, seriesOf } from './winding.ts';

export const results = [
  { id: 'no-load-current', title: 'No-load current', unit: 'A' },
  { id: 'kv', title: 'kV', unit: 'rpm/V' },
  { id: 'no-load-speed', title: 'No-load speed', unit: 'rpm' },
] as const;
/** Magnet flux per kelvin, relative; from memory. */
const fluxPerK = 0.0011;
interface Step {
  readonly volts: Quantity;
  /** Pack current less what flows at neutral, A. */
  readonly driveA: Quantity;
  readonly rpm: Quantity;
  readonly stretch: Stretch;
}
type Input = AnalysisInput<Evidence>;

export function analyse(input: Input): readonly Finding[] {
  return guarded(results, () => {
    requireRun(input.evidence);
    const idleA = idleOf(input);
    const [upper, full] = input.evidence.steps.slice(-2).map((step) => stepOf(input, step.stretch, idleA));
    const canC = canOf(input, full.stretch);
    const ohm = seriesOf(input, canC);
    const airC = reading(input, 'thermistorAmbient', full.stretch).value;
    const kv = kvOf(full, ohm);
    requirePolePairs(kv.value, input.car.motor.ratedKvRpmPerV);
    const at = { full, upper, ohm, kv, warmK: magnetAbove25(canC, airC), ratedV: noLoadV(input.car) };
    return [currentAt(at), kvAt(at), speedAt(at)];
  });
}
function requireRun({ turned, opening = 0, failSafeS, steps }: Evidence): void {
  if (!turned) throw new NotMeasurable(notTurned(opening));
  if (failSafeS === null || failSafeS > failSafeMaxS)
    throw new NotMeasurable(
      `The controller drove on for ${failSafeS === null ? 'longer than the test' : `${failSafeS.toFixed(2)} s`} after the pulses stopped, so full throttle is not safe. Look at its fail-safe setting, then run again.`,
    );
  if (steps.length < 4) throw new NotMeasurable('The run ended before the last throttle step. Run again.');
}
function notTurned(opening: number): string {
  if (opening < 0.295)
    return 'Too few Hall edges came although the throttle was opened. Check the sensor cable, then run again.';
  const perCent = Math.round(opening * 100);
  return `The motor turned too slowly at ${perCent} % throttle, the most that is allowed before the fail-safe test. Check that it turns freely and that the throttle widths are those of its controller, then run again.`;
}
function idleOf(input: Input): Quantity {
  const zero = zeroOf(input, 'packCurrentNarrow');
  return trimmedReading(input, 'packCurrentNarrow', input.evidence.idle, zero);
}
function stepOf(input: Input, stretch: Stretch, idleA: Quantity): Step {
  const zero = zeroOf(input, 'packCurrentNarrow');
  const packA = trimmedReading(input, 'packCurrentNarrow', stretch, zero);
  return {
    volts: reading(input, 'controllerVoltage', stretch),
    driveA: linear([
      [1, packA],
      [-1, idleA],
    ]),
    rpm: speedOf(input, stretch),
    stretch,
  };
}
/** Whole electrical turns between the first and the last edge of one polarity. */
function speedOf({ samples, car }: Input, { fromS, toS }: Stretch): Quantity {
  const edges = samples.edges(fromS, toS);
  const turns = Math.floor((edges.length - 1) / 2);
  if (turns < 10)
    throw new NotMeasurable('Too few Hall edges to tell the speed. Check the sensor cable, then run again.');
  requireEven(edges);
  const spanS = (edges[2 * turns] - edges[0]) * samples.clock.ratio;
  const rpm = ((turns / spanS) * 60) / car.motor.polePairs;
  return uncertain(rpm, [
    clockLine(samples.clock, rpm),
    [typeA(`edges ${fromS.toFixed(3)}`, 'spread of the speed', turns), rpm * speedSpread(edges)],
  ]);
}
/** Relative standard uncertainty of the mean speed from ten parts of the stretch. */
function speedSpread(edges: Float64Array): number {
  const parts = 10;
  const length = Math.floor((edges.length - 1) / parts / 2) * 2;
  if (length < 2) return 0.01;
  const spans = Array.from({ length: parts }, (_, k) => edges[(k + 1) * length] - edges[k * length]);
  const mean = spans.reduce((sum, span) => sum + span, 0) / parts;
  const variance = spans.reduce((sum, span) => sum + (span - mean) ** 2, 0) / (parts - 1);
  return Math.sqrt(variance / parts) / mean;
}
/** A missed or doubled edge shows as a distance far from its neighbours. */
function requireEven(edges: Float64Array): void {
  const turns = Array.from(edges.subarray(2), (edge, k) => edge - edges[k]);
  const sorted = turns.toSorted((a, b) => a - b);
  const middle = sorted[sorted.length >> 1];
  if (sorted[0] < 0.7 * middle || sorted[sorted.length - 1] > 1.4 * middle)
    throw new NotMeasurable(
      'Hall edges were missed or doubled, so the speed is unknown. Check the sensor cable, then run again.',
    );
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
interface At {
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

function ratedCurrent(at: At): Quantity {
  const { full, upper, ohm, kv, warmK } = at;
  const speed = ratedSpeed(at);
  const partA = combined([upper.volts, upper.driveA, upper.rpm, ohm, kv], motorCurrent);
  const straight = combined(
    [full.driveA, partA, full.rpm, upper.rpm, speed, warmK],
    (iFull, iPart, nFull, nPart, n, warm) =>
      cold(warm) * (iFull + ((iPart - iFull) * (n - nFull)) / (nPart - nFull)),
  );
  return widened(straight, curve, rectangular(bentShare(at, speed.value) * straight.value));
}
const curve = typeB(
  'curve',
  'current taken straight between two speeds',
  'computed: a little drag grows with speed squared',
);
/** Drag with the square of speed leaves the line between two speeds by c (n - n1)(n2 - n): told for the middle, it
 *  holds anywhere between, and grows beyond. */
function bentShare({ full, upper }: At, rpm: number): number {
  const [low, high] = [upper.rpm.value, full.rpm.value];
  const middle = ((high - low) / 2) ** 2;
  return 0.004 * Math.max(1, Math.abs((rpm - low) * (rpm - high)) / middle);
}
const titled = (k: 0 | 2, { ratedV }: At) => ({ ...results[k], title: `${results[k].title} at ${ratedV} V` });
const evidenceOf = ({ full, upper }: At, taps: string[]) => [
  { ...full.stretch, taps },
  { ...upper.stretch, taps },
];
function currentAt(at: At): Finding {
  return measured(titled(0, at), ratedCurrent(at), {
    formula: `Pack current at full throttle less the current at neutral, taken to the speed at ${at.ratedV} V along the line to the 75 % step, and to 25 C by the flux of the magnet.`,
    evidence: evidenceOf(at, ['packCurrentNarrow', 'controllerVoltage']),
  });
}
function kvAt(at: At): Finding {
  const value = combined([at.kv, at.warmK, exact(0)], (kv, warm) => kv * cold(warm));
  return measured(results[1], value, {
    formula:
      'Speed at full throttle over (voltage less current times resistance), taken to 25 C by the flux of the magnet.',
    evidence: evidenceOf(at, ['controllerVoltage', 'packCurrentNarrow']).slice(0, 1),
  });
}
function speedAt(at: At): Finding {
  return measured(titled(2, at), ratedSpeed(at), {
    formula: `kV at 25 C times (${at.ratedV} V less no-load current times resistance).`,
    evidence: evidenceOf(at, ['controllerVoltage', 'packCurrentNarrow']).slice(0, 1),
  });
}
