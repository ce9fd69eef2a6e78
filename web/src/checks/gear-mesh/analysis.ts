// SPDX-License-Identifier: MIT
// gear-mesh: how much the drag goes to and fro over a turn of the spur and of the pinion, and where the spur is tight. Pure.
import { guarded, measured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { uncertain } from '#core/measurements/quantity';
import { rectangular, typeA, typeB, type Line } from '#core/measurements/tap-errors';
import { steadyOf } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import { usualOhm } from '../motor-no-load/winding.ts';
import { dragAt, meshWaves, polarOf, type MeshWaves } from './drag-curve.ts';
import type { Evidence } from './evidence.ts';
import { spurPerShaft, startHalfRad } from './mesh-angle.ts';
import { tightDegrees } from './tight-tooth.ts';

export const results = [
  { id: 'spur-variation', title: 'Drag over a turn of the spur, greatest less least', unit: '%' },
  { id: 'tight-place', title: 'Tight place of the spur, past its paint dot', unit: 'degrees' },
  { id: 'pinion-variation', title: 'Drag over a turn of the pinion, greatest less least', unit: '%' },
] as const;
type Input = AnalysisInput<Evidence>;

/** Four orders can't draw a narrow place to its full height; estimated for one that falls to half within 30 degrees. */
const shapeShare = 0.12;
/** The drag of the motor at the speed of the run stands in the mean as well; told for 3,000 rpm. */
const speedShare = 0.05;
/** How well a person sets the dot, and what backlash leaves, degrees of the spur; from memory. */
const dotDegrees = 3;
/** What the missing orders may shift the top of the curve by, degrees. */
const shapeDegrees = 4;

export function analyse(input: Input): readonly Finding[] {
  return guarded(results, () => {
    const waves = meshWaves(input);
    return [spurAt(input, waves), placeAt(input, waves), pinionAt(input, waves)];
  });
}
const evidenceOf = ({ evidence }: Input) => {
  const { slow, coast } = evidence.run!.turning!;
  return [
    { ...slow, taps: ['packCurrentNarrow'] },
    { ...coast, taps: ['packCurrentNarrow'] },
  ];
};
const sumU = ({ spur }: MeshWaves, weight: (order: number) => number): number =>
  Math.hypot(...spur.map(({ order, u }) => weight(order) * u));
const scatter = (id: string, u: number): Line => [typeA(id, 'scatter of edges and current', 100), u];

/** The inertia's part of each order goes with the fall of the run-down. */
const fallLine = ({ fall: [value, u] }: MeshWaves, of: number): Line => [
  typeB('fall', 'run-down of the train', 'scatter of the run-down'),
  rectangular(Math.SQRT2 * of * Math.hypot(u / value, 0.03)),
];
function spurAt(input: Input, waves: MeshWaves): Finding {
  const drags = polarOf(waves).map(({ drag }) => drag);
  const span = 100 * (Math.max(...drags) - Math.min(...drags));
  const value = uncertain(span, [
    scatter('spur', 100 * Math.SQRT2 * sumU(waves, () => 1)),
    fallLine(waves, span),
    [typeB('shape', 'shape between the orders', 'estimated'), rectangular(shapeShare * span)],
    [typeB('speed', 'speed of the run', 'from memory'), rectangular(speedShare * span)],
  ]);
  return measured(results[0], value, {
    formula:
      'Drag by angle of the spur, from the pack current and from the times of the Hall edges, of the mean drag of motor and train: T = Ke i - J dw/dt over many turns.',
    evidence: evidenceOf(input),
    notes: [polarWords(waves)],
  });
}
function polarWords({ spur }: MeshWaves): string {
  const points = Array.from({ length: 12 }, (_, k) => {
    const drag = dragAt(spur, (k * Math.PI) / 6);
    return `${30 * k}°: ${(100 * drag).toFixed(0)} %`;
  });
  return `Drag by angle of the spur past its dot, of the mean: ${points.join(', ')}.`;
}
/** At the top the slope is nought: an error of slope over the curvature is an error of place. */
function placeAt(input: Input, waves: MeshWaves): Finding {
  const degrees = tightDegrees(waves);
  const top = (degrees * Math.PI) / 180;
  const h = 0.02;
  const bend = Math.abs(
    (dragAt(waves.spur, top + h) + dragAt(waves.spur, top - h) - 2 * dragAt(waves.spur, top)) / h ** 2,
  );
  const slopeU = sumU(waves, (order) => order);
  const anywhere = 180 / Math.sqrt(3);
  const startDegrees = (startHalfRad(input.car) * spurPerShaft(input.car) * 180) / Math.PI;
  const value = uncertain(degrees, [
    scatter('place', Math.min(anywhere, ((slopeU / Math.max(bend, 1e-9)) * 180) / Math.PI)),
    [typeB('start', 'rotor between two Hall edges at the start', 'computed'), rectangular(startDegrees)],
    [typeB('dot', 'setting of the dot, backlash', 'from memory'), rectangular(dotDegrees)],
    [typeB('shape', 'shape between the orders', 'estimated'), rectangular(shapeDegrees)],
  ]);
  return measured(results[1], value, {
    formula:
      'Where the drag is greatest: so far has the spur turned on in its running direction since the paint dot stood at the top.',
    evidence: evidenceOf(input),
  });
}
/** Share of the drag, from the current at once a turn: i moves with w = -R i/Ke, and J dw/dt is the larger part. */
function pinionAt(input: Input, waves: MeshWaves): Finding {
  const { share, u } = waves.pinion;
  const swing = swingOf(input, waves);
  const grown = Math.hypot(1, swing.value);
  const relative = (swing.value ** 2 / grown ** 2) * swing.share;
  const span = 200 * share * grown;
  const value = uncertain(span, [
    scatter('pinion', 200 * u * grown),
    fallLine(waves, span),
    [typeB('ohm', 'winding and kV of the class', 'from memory'), rectangular(relative * span)],
    [typeB('speed', 'speed of the run', 'from memory'), rectangular(speedShare * span)],
  ]);
  return measured(results[2], value, {
    formula:
      'Pack current at once a turn of the pinion, of the mean, times the ratio of drag to current at that order: 1 + w0 R I/(Ke d) over the fall of the run-down.',
    evidence: evidenceOf(input),
    notes: [
      'The pinion turns with the rotor: what the rotor does by itself once a turn is in this figure. A run with the pinion off tells it.',
    ],
  });
}
/** w0 R I0/(Ke d fall): the motor's current is the pack's over the duty, and the duty follows from V d = Ke w + R i. */
function swingOf(input: Input, { run, speedRadS, driveA, fall }: MeshWaves) {
  const { motor } = input.car;
  const [low, high] = usualOhm(motor);
  const ohm = (low + high) / 2;
  const torquePerA = 60 / (2 * Math.PI * motor.ratedKvRpmPerV);
  const busV = steadyOf(input, 'controllerVoltage', run.turning!.slow).mean;
  const backV = torquePerA * speedRadS;
  // V d = backV + R driveA/d, so d is the positive root.
  const duty = (backV + Math.sqrt(backV ** 2 + 4 * busV * ohm * driveA)) / (2 * busV);
  return {
    value: (speedRadS * ohm * driveA) / (torquePerA * duty * fall[0]),
    share: (high - low) / 2 / ohm + 2 * motor.ratedKvTolerance,
  };
}
