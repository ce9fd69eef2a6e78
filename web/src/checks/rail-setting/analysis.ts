// SPDX-License-Identifier: MIT
// rail-setting: the rail against its setting where the pack leaves head-room, and what of it is left at race current,
// min(rail, pack - I R - drop), with R of pack and leads from steps of the load bank. Pure.
import { combined, linear, uncertain, type Quantity } from '#core/measurements/quantity';
import { guarded, measured, type ResultName } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { rectangular, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, reading } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import { headRoomLack } from '../head-room.ts';
import { raceCurrentA } from '../race-current.ts';
import type { Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

export const results = [
  { id: 'rail-setting', title: 'Rail against its setting', unit: 'V', level: 'railVoltage' },
  { id: 'rail-in-race', title: 'Rail at race current', unit: 'V' },
] as const;
type Input = AnalysisInput<Evidence>;
/** What a regulator needs between its input and its output at the servo's work; from memory, no source. */
const dropOut = { V: 0.25, halfWidth: 0.2 } as const;

export function analyse(input: Input): readonly Finding[] {
  const [setting, race] = results;
  return [
    ...guarded([setting], () => [settingOf(setting, input)]),
    ...guarded([race], () => [raceOf(race, input)]),
  ];
}
function settingOf(name: ResultName, input: Input): Finding {
  const { rest } = input.evidence;
  const lack = headRoomLack(input, rest);
  if (lack) throw new NotMeasurable(`${lack} ${leftWords(input)} Charge the pack, then run again.`);
  return measured(name, reading(input, 'railVoltage', rest), {
    formula: 'Mean of the rail voltage with nothing switched on at the rail.',
    evidence: [{ ...rest, taps: ['railVoltage', 'controllerVoltage'] }],
  });
}
/** The figure that counts where the setting can't be judged. */
function leftWords(input: Input): string {
  const left = railLeft(input);
  return `What counts is the rail in the race: ${left.value.toFixed(1)} V at ${raceCurrentA(input.car)} A.`;
}
function raceOf(name: ResultName, input: Input): Finding {
  const { rest, steps } = input.evidence;
  const stretches = [rest, ...steps.flatMap(({ loaded, free }) => [loaded, free])];
  return measured(name, railLeft(input), {
    formula: `Least of the rail at rest and pack - I R - drop, at ${raceCurrentA(input.car)} A; R of pack and leads from steps of the load bank.`,
    evidence: stretches.map((stretch) => ({
      ...stretch,
      taps: ['railVoltage', 'packVoltage', 'packCurrentNarrow'],
    })),
    notes: [`Pack and leads: ${(1e3 * sourceOhm(input).value).toFixed(0)} mΩ.`],
  });
}
function railLeft(input: Input): Quantity {
  const { rest } = input.evidence;
  const drop = uncertain(dropOut.V, [
    [
      typeB('drop-out', 'drop of the regulator', 'rule of thumb, from memory'),
      rectangular(dropOut.halfWidth),
    ],
  ]);
  const inputs = [
    reading(input, 'railVoltage', rest),
    reading(input, 'packVoltage', rest),
    sourceOhm(input),
    drop,
  ];
  const amps = raceCurrentA(input.car);
  return combined(inputs, (rail, pack, ohm, lost) => Math.min(rail, pack - amps * ohm - lost));
}
/** Of pack and leads: fall over rise in current, both as differences, so that zeros and offsets fall out. */
function sourceOhm(input: Input): Quantity {
  const { steps } = input.evidence;
  if (steps.length === 0) throw new NotMeasurable('No step of the load bank was reached. Run again.');
  return combined(
    [stepOf(input, 'packVoltage'), stepOf(input, 'packCurrentNarrow')],
    (fall, rise) => -fall / rise,
  );
}
function stepOf(input: Input, tap: string): Quantity {
  const { steps } = input.evidence;
  const part = (sign: 1 | -1, stretch: Stretch) =>
    [sign / steps.length, reading(input, tap, stretch)] as const;
  return linear(steps.flatMap(({ loaded, free }) => [part(1, loaded), part(-1, free)]));
}
