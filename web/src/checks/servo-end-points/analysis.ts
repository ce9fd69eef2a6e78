// SPDX-License-Identifier: MIT
// servo-end-points: from the holding currents of every step to where the linkage binds on either side, as pulse width,
// as degrees, as the radio's own per cent; what holding just inside it draws. Pure.
import { guarded, measured, notMeasured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { combined, linear, widened, type Quantity } from '#core/measurements/quantity';
import { rectangular, typeB } from '#core/measurements/tap-errors';
import { trimmedReading, zeroOf } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import type { Evidence, Side } from './evidence.ts';
import { proposal } from './proposal.ts';
import { radioWidths, type RadioWidths } from './radio-widths.ts';
import { stopOf, type FoundStop } from './side-stop.ts';

export const results = [
  { id: 'end-point-left', title: 'End point left', unit: 'us' },
  { id: 'end-point-right', title: 'End point right', unit: 'us' },
  { id: 'travel-left', title: 'Travel to the left, at the horn', unit: 'degrees' },
  { id: 'travel-right', title: 'Travel to the right, at the horn', unit: 'degrees' },
  { id: 'travel-asymmetry', title: 'Left and right apart', unit: '%' },
  { id: 'setting-left', title: 'End point left, in per cent of the radio', unit: '%' },
  { id: 'setting-right', title: 'End point right, in per cent of the radio', unit: '%' },
  { id: 'travel-used', title: "Radio's travel that steers, resolution left", unit: '%' },
  {
    id: 'hold-left',
    title: 'Holding current just inside the left end point',
    unit: 'A',
    level: 'railCurrent',
  },
  {
    id: 'hold-right',
    title: 'Holding current just inside the right end point',
    unit: 'A',
    level: 'railCurrent',
  },
] as const;
const named = Object.fromEntries(results.map((result) => [result.id, result])) as Record<
  (typeof results)[number]['id'],
  (typeof results)[number]
>;
const neutralUs = 1500;
type Input = AnalysisInput<Evidence>;
type Hand = 'left' | 'right';

export function analyse(input: Input): readonly Finding[] {
  const radio = radioWidths(input.evidence);
  const side = (hand: Hand): Side => ((hand === 'left') === leftIsShort(radio) ? 'short' : 'long');
  return [
    ...(['left', 'right'] as const).flatMap((hand) => ofStop(input, hand, side(hand), radio)),
    ...guarded([named['travel-asymmetry']], () => [asymmetry(input, side)]),
    ...guarded([named['travel-used']], () => [travelUsed(input, side, radio)]),
    ...(['left', 'right'] as const).flatMap((hand) => ofHold(input, hand, side(hand))),
  ].toSorted((a, b) => placeOf(a) - placeOf(b));
}
const placeOf = ({ id }: Finding): number => results.findIndex((result) => result.id === id);
const leftIsShort = (radio: RadioWidths | string): boolean =>
  typeof radio === 'string' || radio.left.value < radio.centre.value;

/** Width, degrees and per cent of one stop. */
function ofStop(input: Input, hand: Hand, side: Side, radio: RadioWidths | string): readonly Finding[] {
  const [end, travel, setting] = [
    named[`end-point-${hand}`],
    named[`travel-${hand}`],
    named[`setting-${hand}`],
  ];
  return guarded([end, travel, setting], () => {
    const stop = stopOf(input, side);
    const told = { evidence: stop.evidence, notes: sideNotes(radio, hand, side) };
    return [
      measured(end, stop.widthUs, {
        ...told,
        formula: `Pulse width at which the holding current begins to grow as the square of the way beyond it; the tightest of the looks, ${stop.hitch}.`,
      }),
      measured(travel, degreesOf(input, stop), {
        ...told,
        formula: `From the neutral of ${neutralUs} µs to the end point, times the servo's degrees per µs.`,
        notes: [],
      }),
      typeof radio === 'string'
        ? notMeasured(setting, radio)
        : measured(setting, percentOf(stop, radio, hand), {
            ...told,
            formula: 'Width from the centre to the end point over the same to the full wheel at 100 %.',
            notes: [proposal(hand, percentOf(stop, radio, hand).value, radio, degreesPerUs(input))],
          }),
    ];
  });
}
const sideNotes = (radio: RadioWidths | string, hand: Hand, side: Side): string[] =>
  typeof radio === 'string'
    ? [`The pulses of the radio are not known, so ${hand} here only means ${side}er pulses.`]
    : [`On the side of ${side}er pulses.`];

/** The label's or the protractor's degrees per us: good for some per cent. */
const perUsShare = 0.01;
const degreesPerUs = ({ car }: Input): number => car.servo.degreesPerUs;
function degreesOf(input: Input, { widthUs }: FoundStop): Quantity {
  const out = linear([[Math.sign(widthUs.value - neutralUs) * degreesPerUs(input), widthUs]]);
  const value = Math.abs(widthUs.value - neutralUs) * degreesPerUs(input);
  const scale = typeB('degrees', "the servo's degrees per µs", 'from memory');
  return widened({ ...out, value }, scale, rectangular(value * perUsShare));
}
const percentOf = ({ widthUs }: FoundStop, radio: RadioWidths, hand: Hand): Quantity =>
  combined([widthUs, radio.centre, radio[hand]], (w, centre, full) => (100 * (w - centre)) / (full - centre));

function asymmetry(input: Input, side: (hand: Hand) => Side): Finding {
  const [left, right] = (['left', 'right'] as const).map((hand) => stopOf(input, side(hand)));
  const away = (width: number) => Math.abs(width - neutralUs);
  const value = combined(
    [left.widthUs, right.widthUs],
    (l, r) => (100 * Math.abs(away(l) - away(r))) / Math.max(away(l), away(r)),
  );
  const [early, late] =
    away(left.widthUs.value) < away(right.widthUs.value) ? ['left', 'right'] : ['right', 'left'];
  return measured(named['travel-asymmetry'], value, {
    formula: 'Difference of the two travels over the greater one.',
    evidence: [...left.evidence, ...right.evidence],
    notes: [`It binds earlier on the ${early} than on the ${late}.`],
  });
}
function travelUsed(input: Input, side: (hand: Hand) => Side, radio: RadioWidths | string): Finding {
  const name = named['travel-used'];
  if (typeof radio === 'string') return notMeasured(name, radio);
  const stops = (['left', 'right'] as const).map((hand) => ({ hand, stop: stopOf(input, side(hand)) }));
  const value = linear(stops.map(({ hand, stop }) => [0.5, percentOf(stop, radio, hand)]));
  return measured(name, value, {
    formula:
      'Mean of both settings: the share of the steps between the end points at 100 % that move the wheels.',
    evidence: stops.flatMap(({ stop }) => stop.evidence),
    notes: usedNotes(value.value),
  });
}
/** Below this a shorter horn hole gives finer steering; from memory, no source. */
const fewPercent = 70;
const usedNotes = (percent: number): string[] =>
  percent >= fewPercent
    ? []
    : [
        `Only ${percent.toFixed(0)} % of the steps steer: one hole further in on the horn gives finer steering and more force.`,
      ];

function ofHold(input: Input, hand: Hand, side: Side): readonly Finding[] {
  const name = named[`hold-${hand}`];
  const hold = input.evidence.holds.find((one) => one.side === side);
  if (!hold)
    return [
      notMeasured(name, 'No end point was found on this side, so there was nothing to hold inside of.'),
    ];
  return guarded([name], () => [
    measured(name, trimmedReading(input, 'railCurrent', hold.stretch, zeroOf(input, 'railCurrent')), {
      formula: `Mean rail current while the servo held ${hold.widthUs} µs.`,
      evidence: [{ ...hold.stretch, taps: ['railCurrent'] }],
    }),
  ]);
}
