// SPDX-License-Identifier: MIT
// motor-coastdown: the power that full throttle takes gives the drag torque T = (V I - R I^2)/w; the run-down gives the
// same drag over the inertia, so the inertia is one over the other, and the fit splits the drag into dry friction and
// what grows with speed. Refuses where the controller brakes. Pure.
import { noLoadV } from '#core/limits/no-load-voltage';
import { deceleration } from '#core/measurements/coast-down';
import { guarded, measured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { combined, linear, uncertain, type Quantity } from '#core/measurements/quantity';
import { clockLine, rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import { canOf, seriesOf } from '../motor-no-load/winding.ts';
import { neutralCurrent, stepOf, type Step } from '../motor-step.ts';
import { requireProven } from '../proven-spin.ts';
import type { Evidence } from './evidence.ts';
import { brakes, dryShare, requireNoBackFlow, runDown, secondsBetween, type RunDown } from './run-down.ts';

export const results = [
  { id: 'coast-drag-torque', title: 'Drag torque at no-load speed', unit: 'mN·m' },
  { id: 'coast-time', title: 'Run-down from 10 000 to 5 000 rpm', unit: 's' },
  { id: 'coast-dry-share', title: 'Dry friction, of the drag at no-load speed', unit: '%' },
  { id: 'rotor-inertia', title: 'Inertia of the rotor', unit: 'g·cm²' },
] as const;
type Input = AnalysisInput<Evidence>;

const radSPerRpm = (2 * Math.PI) / 60;
const coastRpm = { upper: 10_000, lower: 5_000 } as const;
/** No rotor of this size is lighter: less says that more than its own drag slows it; kg m2, from memory. A run-down below
 *  half a second is suspect, and a light rotor then as well. */
const leastInertia = { ever: 2e-6, suspect: 2.8e-6 } as const;
const suspectS = 0.5;
/** What friction that is not of the fitted form leaves of a deceleration, of the dry part in points; from memory. */
const formShare = 0.01;
const formPoints = 3;

export function analyse(input: Input): readonly Finding[] {
  return guarded(results, () => {
    const { idle, spins } = input.evidence;
    requireProven(input.evidence);
    if (spins.length === 0) throw new NotMeasurable('The run ended before the first run-down. Run again.');
    const idleA = neutralCurrent(input, idle);
    const runs = spins.map(({ full, coast }) => {
      requireNoBackFlow(input, coast, idle);
      return { step: stepOf(input, full, idleA), down: runDown(input, coast) };
    });
    const at = { input, runs, series: seriesOf(input, canOf(input, spins[0].full)) };
    const inertia = inertiaOf(at);
    requireFree(inertia.value, Math.min(...runs.map(({ down }) => down.stoodAfterS)));
    return [torqueAt(at), timeAt(at), shareAt(at), inertiaAt(at, inertia)];
  });
}
interface At {
  readonly input: Input;
  readonly runs: readonly { readonly step: Step; readonly down: RunDown }[];
  readonly series: Quantity;
}
/** N m at the speed of a step: what the bus gives less what the winding takes. */
const torqueOf = ({ volts, driveA, rpm }: Step, ohm: Quantity): Quantity =>
  combined([volts, driveA, rpm, ohm], (v, i, n, r) => (v * i - r * i * i) / (n * radSPerRpm));

/** Speed at the label's voltage, from kV and current of a step. */
const noLoadRadS = ({ input, series }: At, { volts, driveA, rpm }: Step): number => {
  const backV = volts.value - driveA.value * series.value;
  return (rpm.value * radSPerRpm * (noLoadV(input.car) - driveA.value * series.value)) / backV;
};
/** Deceleration at a speed as a quantity, rad/s2. */
function fall(at: At, k: number, speedRadS: number): Quantity {
  const { fit } = at.runs[k].down;
  const [value, u] = deceleration(fit, speedRadS);
  return uncertain(value, [
    [typeA(`run-down ${k}`, 'scatter of the run-down', fit.dof), u],
    clockLine(at.input.samples.clock, 2 * value),
    [typeB('form', 'drag of another form', 'from memory'), rectangular(formShare * value)],
  ]);
}
const meanOf = (values: readonly Quantity[]): Quantity =>
  linear(values.map((value) => [1 / values.length, value] as const));

function inertiaOf(at: At): Quantity {
  return meanOf(
    at.runs.map(({ step }, k) =>
      combined([torqueOf(step, at.series), fall(at, k, step.rpm.value * radSPerRpm)], (t, a) => t / a),
    ),
  );
}
function requireFree(inertiaKgM2: number, stoodAfterS: number): void {
  const isQuick = stoodAfterS < suspectS;
  if (inertiaKgM2 >= leastInertia[isQuick ? 'suspect' : 'ever']) return;
  throw new NotMeasurable(
    brakes(`stood after ${stoodAfterS.toFixed(2)} s, sooner than a rotor of this size would by its own drag`),
  );
}
const evidenceOf = ({ input }: At, coasts: boolean) =>
  input.evidence.spins.flatMap(({ full, coast }) => [
    { ...full, taps: ['packCurrentNarrow', 'controllerVoltage'] },
    ...(coasts ? [{ ...coast, taps: ['packCurrentNarrow'] }] : []),
  ]);
function torqueAt(at: At): Finding {
  const carried = at.runs.map(({ step, down }) => {
    const [there] = deceleration(down.fit, noLoadRadS(at, step));
    const [here] = deceleration(down.fit, step.rpm.value * radSPerRpm);
    return linear([[(1e3 * there) / here, torqueOf(step, at.series)]]);
  });
  return measured(results[0], meanOf(carried), {
    formula: `Voltage times (current less the current at neutral), less the heat of the winding, over the speed; carried to the speed at ${noLoadV(at.input.car)} V along the run-down.`,
    evidence: evidenceOf(at, true),
  });
}
function timeAt(at: At): Finding {
  const { clock } = at.input.samples;
  const [upper, lower] = [coastRpm.upper, coastRpm.lower].map((rpm) => rpm * radSPerRpm);
  const times = at.runs.map(({ down: { fit } }, k) => {
    if (fit.startRadS < upper)
      throw new NotMeasurable(
        `The motor never reached ${coastRpm.upper} rpm, so this run-down can not be told.`,
      );
    const seconds = secondsBetween(fit, upper, lower) * clock.ratio;
    const [atUpper, u] = deceleration(fit, upper);
    return uncertain(seconds, [
      [typeA(`run-down ${k}`, 'scatter of the run-down', fit.dof), (seconds * u) / atUpper],
      clockLine(clock, seconds),
      [typeB('form', 'drag of another form', 'from memory'), rectangular(formShare * seconds)],
    ]);
  });
  return measured(results[1], meanOf(times), {
    formula: 'Time between the two speeds along the fitted run-down, mean of the runs.',
    evidence: evidenceOf(at, true),
  });
}
function shareAt(at: At): Finding {
  const shares = at.runs.map(({ step, down: { fit } }, k) => {
    const [share, u] = dryShare(fit, noLoadRadS(at, step));
    return uncertain(100 * share, [
      [typeA(`run-down ${k}`, 'scatter of the run-down', fit.dof), 100 * u],
      [typeB('form', 'drag of another form', 'from memory'), rectangular(formPoints)],
    ]);
  });
  return measured(results[2], meanOf(shares), {
    formula:
      'The part a of a + b w + c w², fitted to the fall of the speed: bearings and brushing parts; the rest is air and iron.',
    evidence: evidenceOf(at, true),
  });
}
function inertiaAt(at: At, inertia: Quantity): Finding {
  return measured(results[3], linear([[1e7, inertia]]), {
    formula: 'Drag torque at full throttle over the deceleration at that speed.',
    evidence: evidenceOf(at, true),
  });
}
