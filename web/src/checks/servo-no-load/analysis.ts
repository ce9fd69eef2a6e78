// SPDX-License-Identifier: MIT
// servo-no-load: the current of a free servo at full speed and in slow sweeps, either way, and tight spots along the
// travel. Pure.
import { mean, median } from 'simple-statistics';
import { guarded, measured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { combined, linear, uncertain, widened, type Quantity } from '#core/measurements/quantity';
import { rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, reading, steadyOf, trimmedReading, zeroOf } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import { moveIn, moveSeries, plateauOf, type Move } from '../servo-moves.ts';
import type { Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';
import { travelCurrents, type Place } from './travel-current.ts';

export const results = [
  { id: 'moving-current', title: 'Current moving at full speed', unit: 'A', level: 'railCurrent' },
  { id: 'direction-asymmetry', title: 'Difference between the directions', unit: '%' },
  { id: 'sweep-current', title: 'Current of a slow sweep, above rest', unit: 'A' },
  { id: 'tight-spot', title: 'Tightest place against the middle', unit: 'times' },
] as const;
type Input = AnalysisInput<Evidence>;
/** Part of a move where inrush is over and the drive not yet taken back: the same places of the travel both ways. */
const evenPart = { from: 0.3, to: 0.7 };
/** e^-6 of an inrush of ten times the even current, and a fifth of that after the mean over the part (computed). */
const settlingPercent = 0.5;

export const analyse = (input: Input): readonly Finding[] => [
  ...guarded(results.slice(0, 2), () => moving(input)),
  ...guarded(results.slice(2), () => sweeping(input)),
];
const idleOf = (input: Input): number => steadyOf(input, 'railCurrent', input.evidence.idle).mean;

function moving(input: Input): Finding[] {
  const found = evenStretches(input);
  const zero = zeroOf(input, 'railCurrent');
  const meanOf = (longer: boolean) => {
    const some = found.filter((each) => each.longer === longer);
    if (some.length === 0)
      throw new NotMeasurable('No whole move was seen one way. Free the horn, then run again.');
    const currents = some.map(({ stretch }) => trimmedReading(input, 'railCurrent', stretch, zero));
    return linear(currents.map((current) => [1 / currents.length, current] as const));
  };
  const [up, down] = [meanOf(true), meanOf(false)];
  const evidence = found.map(({ stretch }) => ({ ...stretch, taps: ['railCurrent'] }));
  const volts = reading(input, 'railVoltage', found[0].stretch).value;
  return [
    measured(
      results[0],
      linear([
        [0.5, up],
        [0.5, down],
      ]),
      {
        formula: 'Mean rail current in the even part of the moves from side to side, both ways.',
        evidence,
        notes: [
          `Rail ${volts.toFixed(2)} V.`,
          `Longer pulses ${up.value.toFixed(3)} A, shorter ${down.value.toFixed(3)} A.`,
        ],
      },
    ),
    measured(results[1], asymmetry(up, down), {
      formula: 'Difference of the two directions over their mean.',
      evidence,
    }),
  ];
}
function asymmetry(up: Quantity, down: Quantity): Quantity {
  const [more, less] = up.value > down.value ? [up, down] : [down, up];
  const share = combined([more, less], (a, b) => (200 * (a - b)) / (a + b));
  const left = typeB('settling', 'what is left of the inrush, one way more than the other', 'computed');
  return widened(share, left, rectangular(settlingPercent));
}
function evenStretches(input: Input): { longer: boolean; stretch: Stretch }[] {
  const idleA = idleOf(input);
  const all = input.evidence.moves.map((move) => ({
    ...move,
    series: moveSeries(input.samples, move.stretch),
  }));
  const plateauA = plateauOf(
    all.map(({ series }) => series),
    idleA,
  );
  return all.flatMap(({ longer, series }) => {
    const move = moveIn(series, idleA, plateauA);
    return move ? [{ longer, stretch: evenOf(move) }] : [];
  });
}
/** A tight spot on the way ends no move. */
const evenOf = ({ startS, overS }: Move): Stretch => ({
  fromS: startS + evenPart.from * (overS - startS),
  toS: startS + evenPart.to * (overS - startS),
});
function sweeping(input: Input): Finding[] {
  const places = travelCurrents(input, idleOf(input));
  const evidence = input.evidence.sweeps.map(({ stretch }) => ({ ...stretch, taps: ['railCurrent'] }));
  const tightest = places.reduce((most, place) => (place.amps > most.amps ? place : most));
  return [
    measured(results[2], sweepCurrent(input), {
      formula: 'Mean rail current of both slow sweeps, less what flows at rest.',
      evidence,
    }),
    measured(results[3], tightness(tightest, places), {
      formula: 'Greatest mean current of any 40 µs of the travel over the median of all, both above rest.',
      evidence,
      notes: [whereWords(input, tightest)],
    }),
  ];
}
function sweepCurrent(input: Input): Quantity {
  const zero = zeroOf(input, 'railCurrent');
  const at = (stretch: Stretch) => trimmedReading(input, 'railCurrent', stretch, zero);
  const sweeps = input.evidence.sweeps.map(({ stretch }) => at(stretch));
  return linear(sweeps.map((sweep) => [1 / sweeps.length, sweep] as const));
}
function tightness(tightest: Place, places: readonly Place[]): Quantity {
  const middle = median(places.map(({ amps }) => amps));
  const u = mean(places.map((place) => place.u));
  const of = (name: string, value: number, uncertainty: number) =>
    uncertain(value, [[typeA(name, name, places.length - 1), uncertainty]]);
  return combined(
    [of('current of the tightest place', tightest.amps, tightest.u), of('median current', middle, u)],
    (most, usual) => most / usual,
  );
}
function whereWords({ car }: Input, { atUs }: Place): string {
  const degrees = (atUs - 1500) * car.servo.degreesPerUs;
  return `Tightest at a pulse of ${atUs.toFixed(0)} µs, ${Math.abs(degrees).toFixed(0)} degrees towards ${degrees < 0 ? 'shorter' : 'longer'} pulses from the centre.`;
}
