// SPDX-License-Identifier: MIT
// timing-sweep: kV and no-load current at each mark as motor-no-load reads them, the drift by the first mark run again,
// what a degree brings and costs, and the mark to take. Gain errors of the taps fall out of what a degree brings. Pure.
import { guarded, measured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { combined, uncertain, widened, type Quantity } from '#core/measurements/quantity';
import { rectangular, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import { coldKv, noLoadAt, ratedCurrent } from '../motor-no-load/analysis.ts';
import { canOf } from '../motor-no-load/winding.ts';
import { requireProven } from '../proven-spin.ts';
import type { Evidence, Mark } from './evidence.ts';
import { leastGain, proposed, tradeWords, type MarkFigures } from './trade.ts';

export const results = [
  { id: 'timing-drift', title: 'Current at the first mark, run again, against the first time', unit: '%' },
  { id: 'timing-speed-gain', title: 'Speed that ten degrees bring', unit: '%' },
  { id: 'timing-current-cost', title: 'Current that ten degrees cost', unit: '%' },
  { id: 'timing-proposed', title: 'Mark to take', unit: 'degrees' },
] as const;
type Input = AnalysisInput<Evidence>;
const fewestMarks = 3;
/** Where the screws leave a mark, degrees; from memory. */
const setDegrees = 1;
const tenDegrees = 10;

export function analyse(input: Input): readonly Finding[] {
  return guarded(results, () => {
    const { marks } = input.evidence;
    marks.forEach(requireProven);
    const all = marks.map((mark) => figuresOf(input, mark));
    requireMarks(all);
    const again = all[all.length - 1];
    const set = all.slice(0, -1).toSorted((a, b) => a.degrees - b.degrees);
    const told = { evidence: marks.map(evidenceOf) };
    const ends = [set[0], set[set.length - 1]] as const;
    return [
      measured(results[0], driftOf(all[0], again), { ...told, formula: driftFormula }),
      measured(
        results[1],
        perTen(ends, ({ kv }) => kv),
        { ...told, formula: perTenFormula('kV at 25 °C') },
      ),
      measured(
        results[2],
        perTen(ends, ({ currentA }) => currentA),
        {
          ...told,
          formula: perTenFormula('no-load current at 25 °C'),
        },
      ),
      measured(results[3], settingOf(set), { ...told, formula: proposedFormula, notes: tradeWords(set) }),
    ];
  });
}
const driftFormula =
  'No-load current at the first mark after all the others, against the first time: what warming, bearings and a screw that slipped do to every mark.';
const perTenFormula = (what: string): string =>
  `From the least to the most advanced mark: change of ${what}, over the degrees between them, times ten.`;
const proposedFormula = `The most advanced mark up to which each step brought at least ${leastGain} % of speed for each per cent of current (from memory, no source); the class rules and the maker's word come first.`;

function figuresOf(input: Input, mark: Mark): MarkFigures {
  const at = noLoadAt({ ...input, evidence: mark });
  return {
    degrees: mark.degrees,
    kv: coldKv(at),
    currentA: ratedCurrent(at),
    canC: canOf(input, at.full.stretch).value,
  };
}
const evidenceOf = ({ steps }: Mark) => ({
  ...steps[steps.length - 1].stretch,
  taps: ['packCurrentNarrow', 'controllerVoltage'],
});
function requireMarks(all: readonly MarkFigures[]): void {
  if (all.length < fewestMarks + 1)
    throw new NotMeasurable(
      `Only ${Math.max(0, all.length - 1)} marks were run and the first again is missing; at least ${fewestMarks} are needed. Run again.`,
    );
  const degrees = all.slice(0, -1).map((mark) => mark.degrees);
  if (new Set(degrees).size < degrees.length)
    throw new NotMeasurable(
      'Two marks have the same degrees. Read them again from the end bell, then run again.',
    );
  if (all[all.length - 1].degrees !== all[0].degrees)
    throw new NotMeasurable(
      `The last mark was read as ${all[all.length - 1].degrees} degrees and should have been the first one, ${all[0].degrees}. Run again.`,
    );
}
const percent = (to: Quantity, from: Quantity): Quantity => combined([to, from], (b, a) => 100 * (b / a - 1));

const driftOf = (first: MarkFigures, again: MarkFigures): Quantity => {
  const change = percent(again.currentA, first.currentA);
  const magnitude = combined([change], (value) => value * (change.value < 0 ? -1 : 1));
  return widened(magnitude, setLine, rectangular(Math.abs(change.value) * 0.1));
};
const setLine = typeB('set', 'setting of the end bell', 'from memory');

function perTen(
  [least, most]: readonly [MarkFigures, MarkFigures],
  of: (mark: MarkFigures) => Quantity,
): Quantity {
  const between = most.degrees - least.degrees;
  const change = percent(of(most), of(least));
  const ten = combined([change], (value) => (tenDegrees * value) / between);
  return widened(ten, setLine, rectangular((Math.SQRT2 * setDegrees * Math.abs(ten.value)) / between));
}
function settingOf(set: readonly MarkFigures[]): Quantity {
  return uncertain(proposed(set).degrees, [[setLine, rectangular(setDegrees)]]);
}
