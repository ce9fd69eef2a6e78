// SPDX-License-Identifier: MIT
// throttle-range: where the motor starts, where the speed stops growing, whether it still grows at the end of the travel,
// and what full brake takes. Pure.
import { guarded, measured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { combined, difference, linear, uncertain, type Quantity } from '#core/measurements/quantity';
import { rectangular, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import { requireProven } from '../proven-spin.ts';
import type { Stretch } from '../stretch.ts';
import type { Evidence, Slowing } from './evidence.ts';
import { asGiven } from './driven-widths.ts';
import { growthAsGiven } from './end-growth.ts';
import { endOf, pointsOf, startOf, type End, type Point } from './travel-lines.ts';

export const results = [
  { id: 'throttle-start', title: 'Motor starts at, of the travel', unit: '%' },
  { id: 'throttle-full-at', title: 'Full speed from, of the travel', unit: '%' },
  { id: 'throttle-end-growth', title: 'Speed still growing at the end, of what it did before', unit: '%' },
  { id: 'brake-effect', title: 'Speed that full brake takes beyond coasting', unit: '%' },
] as const;
type Input = AnalysisInput<Evidence>;

/** Where the line meets the full speed only at the very end, the controller has more to give than it is asked for. */
const endless = 0.993;
/** Speed per volt at full duty as a share of kV: the winding takes the rest (computed for motors of 8.5 to 25 turns). */
const ofKv = { low: 0.975, high: 0.995 };

export function analyse(input: Input): readonly Finding[] {
  return guarded(results, () => {
    requireProven(input.evidence);
    const points = pointsOf(input);
    if (points.length < 9) throw new NotMeasurable('The run ended before full throttle. Run again.');
    const { controller } = input.car;
    const start = asGiven('start', startOf(points), controller, input.samples.clock);
    const end = endOf(points);
    return [
      startFinding(points, start),
      fullFinding(input, points, start, end),
      growthFinding(input, points, end),
      ...guarded([results[3]], () => [brakeFinding(input)]),
    ];
  });
}
const perCent = (share: Quantity): Quantity => linear([[100, share]]);
const evidenceOf = (points: readonly Point[]) =>
  points.map(({ stretch }) => ({ ...stretch, taps: ['controllerVoltage'] }));

function startFinding(points: readonly Point[], start: Quantity): Finding {
  return measured(results[0], perCent(start), {
    formula: 'Straight line through speed over voltage at four small throttles, followed down to standstill.',
    evidence: evidenceOf(points.slice(0, 4)),
  });
}
function fullFinding({ car, samples }: Input, points: readonly Point[], start: Quantity, end: End): Finding {
  const whole = end.meets.value < endless;
  if (whole)
    return measured(results[1], perCent(asGiven('end', end.meets, car.controller, samples.clock)), {
      formula:
        'Straight line through speed over voltage from half to 85 %, up to the speed at full throttle.',
      evidence: evidenceOf(points.slice(4)),
      notes: [`${(100 - 100 * end.meets.value).toFixed(1)} % of the travel does nothing at the end.`],
    });
  const { ratedKvRpmPerV: kv, ratedKvTolerance: tolerance } = car.motor;
  const top = uncertain((kv * (ofKv.low + ofKv.high)) / 2, [
    [typeB('kv label', 'kV on the label', 'label of the motor'), rectangular(kv * tolerance)],
    [typeB('of kv', 'drop in the winding', 'computed'), rectangular((kv * (ofKv.high - ofKv.low)) / 2)],
  ]);
  const reached = combined([start, top, end.slope], (from, rpmPerV, slope) => from + rpmPerV / slope);
  return measured(results[1], perCent(reached), {
    formula:
      'The speed grows to the very end; start of the motor plus the travel that would give what the kV of the label stands for.',
    evidence: evidenceOf(points.slice(4)),
    notes: [
      'The controller was never asked for all it has: teach it the range of this radio, as its manual says, then run again.',
    ],
  });
}
function growthFinding({ car, samples }: Input, points: readonly Point[], end: End): Finding {
  const given = growthAsGiven(end, { controller: car.controller, clock: samples.clock });
  return measured(results[2], perCent(given), {
    formula:
      'Speed over voltage gained from 97 to 100 % of the travel, over what the line from half to 85 % gains there.',
    evidence: evidenceOf(points.slice(4)),
  });
}
function brakeFinding({ evidence, samples }: Input): Finding {
  const { coast, brake } = evidence;
  if (!coast || !brake) throw new NotMeasurable('The run ended before the brake. Run again.');
  const [byItself, braked] = [coast, brake].map((slowing) => lostOf(samples, slowing));
  return measured(results[3], perCent(difference(braked, byItself)), {
    formula:
      'Share of the speed lost in a third of a second of full brake from full throttle, less what coasting loses.',
    evidence: [brake.before, brake.later, coast.later].map((stretch) => ({ ...stretch, taps: [] })),
    notes: [`Coasting loses ${(100 * byItself.value).toFixed(0)} % meanwhile.`],
  });
}
type Samples = Input['samples'];
/** Share of the speed lost between two windows; a stopped motor has no edges left. */
function lostOf(samples: Samples, { before, later }: Slowing): Quantity {
  const [fast, slow] = [before, later].map((span) => edgesPerS(samples, span));
  if (fast === 0) throw new NotMeasurable('No Hall edges came at full throttle. Check the sensor cable.');
  const lost = 1 - slow / fast;
  return uncertain(lost, [
    [
      typeB(`span ${before.fromS.toFixed(3)}`, 'few edges in a tenth of a second', 'computed'),
      rectangular(0.02),
    ],
  ]);
}
function edgesPerS(samples: Samples, { fromS, toS }: Stretch): number {
  const edges = samples.edges(fromS, toS);
  return edges.length < 3 ? 0 : (edges.length - 1) / (edges[edges.length - 1] - edges[0]);
}
