// SPDX-License-Identifier: MIT
// servo-scrub: peak and working current, holding current at lock, time of a move, lowest rail voltage. Pure.
import { mean, sampleStandardDeviation } from 'simple-statistics';
import { guarded, measured, type ResultName } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { combined, exact, linear, uncertain, type Quantity } from '#core/measurements/quantity';
import { clockLine, gainLines, rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, tapOf, trimmedReading, zeroOf } from '#core/measurements/tap-reading';
import { dipQuantity, lowestOf, stretchOf, wholeWave } from '../burst-wave.ts';
import type { AnalysisInput } from '../check.ts';
import type { Evidence, Move } from './evidence.ts';
import { worked, type Worked } from './working-current.ts';

export const results = [
  { id: 'scrub-peak-current', title: 'Peak current, over 2 ms', unit: 'A', level: 'railCurrent' },
  { id: 'scrub-current', title: 'Current under way', unit: 'A', level: 'railCurrent' },
  { id: 'scrub-share', title: 'Current under way, of the stall current', unit: '%' },
  { id: 'scrub-hold', title: 'Holding current at lock', unit: 'A', level: 'railCurrent' },
  { id: 'scrub-time', title: 'Time of a move from lock to lock', unit: 's' },
  { id: 'scrub-dip', title: 'Lowest rail voltage', unit: 'V', level: 'railVoltage' },
] as const;
const [peakName, workName, shareName, holdName, timeName, dipName] = results;
type Input = AnalysisInput<Evidence>;

export function analyse(input: Input): readonly Finding[] {
  const one = (name: ResultName, make: () => Finding) => guarded([name], () => [make()]);
  return [
    ...guarded([peakName, workName, shareName], () => currents(input)),
    ...one(holdName, () => holding(input)),
    ...one(timeName, () => timeOf(input)),
    ...one(dipName, () => dip(input)),
  ];
}
const movesOn = ({ evidence }: Input, tap: string): Move[] =>
  evidence.moves.filter(({ burst }) => burst.tap === tap);

/** Each move heard on the current, zero taken away. */
function linesOf(input: Input): {
  readonly all: Worked[];
  readonly evidence: ReturnType<typeof stretchOf>[];
} {
  const moves = movesOn(input, 'railCurrent');
  if (moves.length < 2) throw new NotMeasurable('Fewer than two moves were heard. Run again.');
  const zeroA = zeroOf(input, 'railCurrent').value;
  const all = moves.map(({ burst }) =>
    worked(
      wholeWave(input, burst)
        .subarray(burst.actionSample ?? 0)
        .map((i) => i - zeroA),
      burst.intervalS,
    ),
  );
  return { all, evidence: moves.map(({ burst }) => stretchOf(burst)) };
}
function currents(input: Input): Finding[] {
  const { all, evidence } = linesOf(input);
  const peak = currentOf(
    input,
    'peak',
    all.map(({ peakA }) => peakA),
    Math.max(...all.map(({ peakA }) => peakA)),
  );
  const work = currentOf(
    input,
    'under way',
    all.map(({ workA }) => workA),
  );
  return [
    measured(peakName, peak, { formula: 'Greatest mean over 2 ms of all moves.', evidence }),
    measured(workName, work, {
      formula: 'Median from 25 to 70 ms after the rise, mean over the moves.',
      evidence,
    }),
    shareOf(input, work, evidence),
  ];
}
/** Taken at this rail and carried to the voltage of the label in plain proportion. */
function shareOf(input: Input, work: Quantity, evidence: ReturnType<typeof stretchOf>[]): Finding {
  const { ratedStallA, ratedVoltageV, ratedStallAtV = ratedVoltageV } = input.car.servo;
  if (ratedStallA === undefined)
    throw new NotMeasurable(
      'The servo has no stall current entered. Enter it from the label, then run again.',
    );
  const railV = input.car.controller.railSettingV;
  const stallA = (ratedStallA * railV) / ratedStallAtV;
  return measured(shareName, linear([[100 / stallA, work]]), {
    formula: `Current under way over the stall current of the label, ${ratedStallA} A at ${ratedStallAtV} V, taken at ${railV} V.`,
    evidence,
  });
}
/** Mean of some moves (or `value` of them), with their scatter, the tap's gain and the drift of its zero. */
function currentOf(
  input: Input,
  words: string,
  values: readonly number[],
  value = mean([...values]),
): Quantity {
  const tap = tapOf(input.rig, 'railCurrent');
  const scatter = sampleStandardDeviation([...values]) / Math.sqrt(values.length);
  return uncertain(value, [
    ...gainLines(input.rig, tap, value, true),
    [
      typeB('drift railCurrent', 'zero drift of railCurrent', 'rig description'),
      rectangular(tap.error.drift),
    ],
    [typeA(`moves ${words}`, `scatter of the moves, ${words}`, values.length - 1), scatter],
  ]);
}
function holding(input: Input): Finding {
  const rests = input.evidence.moves.map(({ rest }) => rest);
  if (rests.length === 0) throw new NotMeasurable('The run ended before the first move. Run again.');
  const zero = zeroOf(input, 'railCurrent');
  const each = rests.map((rest) => trimmedReading(input, 'railCurrent', rest, zero));
  const worst = each.reduce((a, b) => (b.value > a.value ? b : a));
  return measured(holdName, worst, {
    formula: 'Greatest mean while the servo stood at lock after a move.',
    evidence: rests.map((rest) => ({ ...rest, taps: ['railCurrent'] })),
  });
}
function timeOf(input: Input): Finding {
  const { all, evidence } = linesOf(input);
  const times = all.map(({ workS }) => workS);
  const value = mean(times);
  const edges = typeB('edges', "the current's edges against the move's", 'computed from the model');
  const scatter = sampleStandardDeviation(times) / Math.sqrt(times.length);
  const time = uncertain(value, [
    [typeA('moves time', 'scatter of the moves', times.length - 1), scatter],
    [edges, rectangular(0.003)],
    clockLine(input.samples.clock, value),
  ]);
  const degrees =
    meanOf(input.evidence.moves.map(({ fromUs, toUs }) => Math.abs(toUs - fromUs))) *
    input.car.servo.degreesPerUs;
  return measured(
    timeName,
    combined([time, exact(1)], (t) => t),
    {
      formula:
        'From the rise of the current until it is for the last time above the middle of working and resting, mean over the moves.',
      evidence,
      notes: [
        `Over ${degrees.toFixed(0)} degrees: ${((value * 60) / degrees).toFixed(3)} s for 60 degrees, start and stop included.`,
      ],
    },
  );
}
const meanOf = (values: readonly number[]): number => mean([...values]);

function dip(input: Input): Finding {
  const bursts = movesOn(input, 'railVoltage').map(({ burst }) => burst);
  if (bursts.length === 0) throw new NotMeasurable('No move was heard on the rail. Run again.');
  const [lowest] = bursts
    .map((burst) => lowestOf(wholeWave(input, burst)))
    .toSorted((a, b) => a.value - b.value);
  return measured(dipName, dipQuantity(input, lowest), {
    formula:
      'Lowest value of all moves heard on the rail, half the greatest fall between two samples allowed for as missed.',
    evidence: bursts.map(stretchOf),
  });
}
