// SPDX-License-Identifier: MIT
// rest-voltage: polarity first, by the one tap that sees below zero; then pack, lower cell by the balance tap, the
// rest of the cells as the difference, and how far they are apart. Pure.
import { combined, linear, type Quantity } from '#core/measurements/quantity';
import { guarded, measured, type ResultName } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { NotMeasurable, reading } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import type { Evidence } from './evidence.ts';

export const results = [
  { id: 'pack-polarity', title: 'Polarity of the pack', unit: 'V', level: 'polarity' },
  { id: 'pack-voltage', title: 'Pack at rest', unit: 'V', level: 'packVoltage' },
  { id: 'lower-cell', title: 'Lower cell', unit: 'V', level: 'midCell' },
  { id: 'upper-cell', title: 'Upper cell', unit: 'V' },
  { id: 'cell-imbalance', title: 'Difference of the cells', unit: 'V' },
] as const;
/** Less than this either way and no pack is there. */
const packFromV = 1;
type Input = AnalysisInput<Evidence>;

export function analyse(input: Input): readonly Finding[] {
  const [polarity, ...others] = results;
  return [
    ...guarded([polarity], () => [polarityOf(polarity, input)]),
    ...guarded(others, () => {
      requirePack(input);
      return others.flatMap((name) => guarded([name], () => [voltsOf(name, input)]));
    }),
  ];
}
function polarityOf(name: ResultName, input: Input): Finding {
  const value = reading(input, 'polarity', input.evidence.rest);
  if (Math.abs(value.value) < packFromV)
    throw new NotMeasurable('No pack is at the pack lead. Plug it, then run again.');
  const reversed = value.value < 0;
  return measured(name, value, {
    formula: 'Mean of the polarity tap, which sees both signs.',
    evidence: [{ ...input.evidence.rest, taps: ['polarity'] }],
    notes: reversed ? ['The pack is reversed. Unplug it now and mend its plug.'] : [],
  });
}
function requirePack(input: Input): void {
  const { value } = reading(input, 'polarity', input.evidence.rest);
  if (value <= -packFromV)
    throw new NotMeasurable(
      `The pack is reversed (${value.toFixed(1)} V at the polarity tap), so the other taps show nothing. Unplug it now and mend its plug.`,
    );
  if (value < packFromV) throw new NotMeasurable('No pack is at the pack lead. Plug it, then run again.');
}
const formulas: Readonly<Record<string, string>> = {
  'pack-voltage': 'Mean of the pack tap with nothing switched on.',
  'lower-cell': 'Mean of the balance tap.',
  'upper-cell': 'Pack tap less balance tap, over the number of the other cells.',
  'cell-imbalance': 'Upper cell (mean of the others beyond two) less lower cell, without its sign.',
};
function voltsOf(name: ResultName, input: Input): Finding {
  const { rest } = input.evidence;
  return measured(ofCells(name, input.car.pack.cells), quantityOf(name.id, input), {
    formula: formulas[name.id],
    evidence: [{ ...rest, taps: name.id === 'pack-voltage' ? ['packVoltage'] : ['packVoltage', 'midCell'] }],
  });
}
/** The one cell of a pack is what the pack tap shows. */
const ofCells = (name: ResultName, cells: number): ResultName =>
  cells === 1 && name.id === 'lower-cell' ? { ...name, level: 'packVoltage' } : name;

function quantityOf(id: string, input: Input): Quantity {
  const packV = reading(input, 'packVoltage', input.evidence.rest);
  if (id === 'pack-voltage') return packV;
  const others = input.car.pack.cells - 1;
  if (others === 0 && id !== 'lower-cell')
    throw new NotMeasurable('A pack of one cell has no other to hold it against.');
  const lowerV = others === 0 ? packV : lowerCell(input);
  if (id === 'lower-cell') return lowerV;
  const upperV = linear([
    [1 / others, packV],
    [-1 / others, lowerV],
  ]);
  if (id === 'upper-cell') return upperV;
  return combined(
    [upperV, lowerV],
    (upper, lower) => Math.sign(upperV.value - lowerV.value) * (upper - lower),
  );
}
function lowerCell(input: Input): Quantity {
  const lowerV = reading(input, 'midCell', input.evidence.rest);
  if (lowerV.value > 0.3) return lowerV;
  throw new NotMeasurable('The balance tap shows nothing. Plug the balance lead, then run again.');
}
