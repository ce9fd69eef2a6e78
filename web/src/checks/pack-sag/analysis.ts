// SPDX-License-Identifier: MIT
// pack-sag: resistance of pack and leads after a second of load, that of the lower cell by the balance tap, the rest
// as the difference, the sag at race current, and the direct-current resistance of the standard as second way. Pure.
import { difference, linear, widened, type Quantity } from '#core/measurements/quantity';
import { guarded, measured, type ResultName } from '#core/measurements/finding';
import type { EvidenceStretch, Finding } from '#core/measurements/measurement';
import { rectangular, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import { raceCurrentA } from '../race-current.ts';
import { directCurrentOhm } from './direct-current.ts';
import type { Evidence } from './evidence.ts';
import { stepResistance } from './step-line.ts';

export const results = [
  { id: 'pack-resistance', title: 'Resistance of pack and leads', unit: 'ohm' },
  { id: 'lower-cell-resistance', title: 'Resistance of the lower cell', unit: 'ohm' },
  { id: 'upper-cell-resistance', title: 'Upper cell and leads', unit: 'ohm' },
  { id: 'race-sag', title: 'Sag at race current', unit: 'V' },
  { id: 'dc-resistance', title: 'Direct-current resistance', unit: 'ohm' },
] as const;
type Input = AnalysisInput<Evidence>;
/** A cell's resistance is not quite the same at another current: less than this share of the sag (from memory). */
const currentShare = 0.05;

export function analyse(input: Input): readonly Finding[] {
  const makers = [packOf, lowerOf, upperOf, raceOf, standardOf];
  return results.flatMap((name, k) => guarded([name], () => [makers[k](name, input)]));
}
const steps = ({ evidence }: Input, ...taps: string[]): EvidenceStretch[] =>
  evidence.loaded.map((stretch) => ({ ...stretch, taps: [...taps, 'packCurrentWide'] }));

function packOf(name: ResultName, input: Input): Finding {
  return measured(name, stepResistance(input, 'packVoltage'), {
    formula:
      'Slope of pack voltage over pack current through the steps of the pack load after a second, drift of the open pack taken away.',
    evidence: steps(input, 'packVoltage'),
    notes: airWords(input),
  });
}
function lowerOf(name: ResultName, input: Input): Finding {
  return measured(name, lowerOhm(input), {
    formula: 'The same slope of the balance tap.',
    evidence: steps(input, 'midCell'),
    notes: airWords(input),
  });
}
function upperOf(name: ResultName, input: Input): Finding {
  return measured(name, difference(stepResistance(input, 'packVoltage'), lowerOhm(input)), {
    formula: 'Pack and leads less the lower cell.',
    evidence: steps(input, 'packVoltage', 'midCell'),
  });
}
function lowerOhm(input: Input): Quantity {
  const [first] = input.evidence.free;
  const restV = first ? input.samples.series('midCell', first.fromS, first.toS).value[0] : undefined;
  if ((restV ?? 0) < 0.3)
    throw new NotMeasurable('The balance tap shows nothing. Plug the balance lead, then run again.');
  return stepResistance(input, 'midCell');
}
function raceOf(name: ResultName, input: Input): Finding {
  const amps = raceCurrentA(input.car);
  const sag = linear([[amps, stepResistance(input, 'packVoltage')]]);
  const other = typeB('other current', 'resistance at another current', 'rule of thumb, from memory');
  return measured(name, widened(sag, other, rectangular(currentShare * sag.value)), {
    formula: `Resistance of pack and leads times ${amps} A: what is lost after one second; a longer pull takes more.`,
    evidence: steps(input, 'packVoltage'),
  });
}
function standardOf(name: ResultName, input: Input): Finding {
  const { ohm, lightA, heavyA } = directCurrentOhm(input);
  const { capacityAh } = input.car.pack;
  const times = (amps: number) => (amps / capacityAh).toFixed(2);
  const { second } = input.evidence;
  return measured(name, ohm, {
    formula: '(U1 - U2)/(I2 - I1) after 10 s at I1 and 1 s at I2, in the form of IEC 61960-3 (from memory).',
    evidence: Object.values(second ?? {}).map((s) => ({ ...s, taps: ['packVoltage', 'packCurrentWide'] })),
    notes: [
      `The standard takes 0.2 and 1 times the capacity; here ${times(lightA)} and ${times(heavyA)} times, and the leads to the rig are in it.`,
    ],
  });
}
/** Cold packs have more. */
function airWords({ samples }: Input): string[] {
  const air = samples.latest('thermistorAmbient')?.value ?? Number.NaN;
  if (!(air > -20 && air < 80)) return [];
  return [
    `Air at ${air.toFixed(0)} °C; the resistance of a pack falls some 2 % for each K it is warmer (from memory).`,
  ];
}
