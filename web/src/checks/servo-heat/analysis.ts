// SPDX-License-Identifier: MIT
// servo-heat: the case at the end of the work, the time constant of its rise, the case at the flag. Pure.
import { contactTemperature } from '#core/measurements/contact-temperature';
import { guarded, measured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import type { AnalysisInput } from '../check.ts';
import type { Evidence } from './evidence.ts';
import { caseAt, pointsOf, riseOf, timeConstant } from './warming.ts';

export const results = [
  { id: 'case-temperature', title: 'Servo case at the end of the work', unit: 'C', level: 'thermistorServo' },
  { id: 'heat-time-constant', title: 'Time constant of the case', unit: 's' },
  { id: 'flag-temperature', title: 'Servo case at the flag', unit: 'C' },
] as const;
const [endName, tauName, flagName] = results;
const lastS = 8;

export function analyse(input: AnalysisInput<Evidence>): readonly Finding[] {
  const { working, raceS, stoppedHot } = input.evidence;
  const taps = ['thermistorServo', 'thermistorAmbient'];
  const evidence = [{ ...working, taps }];
  const hot = stoppedHot ? ['Stopped early: the case came near what a servo bears. Let it cool.'] : [];
  return [
    ...guarded([endName], () => {
      const end = { fromS: Math.max(working.fromS, working.toS - lastS), toS: working.toS };
      const value = contactTemperature(input, 'thermistorServo', 'thermistorAmbient', end);
      const formula = `Thermistor over the last ${lastS} s, its lag and the part of the rise that it does not show put right.`;
      return [measured(endName, value, { formula, evidence: [{ ...end, taps }], notes: hot })];
    }),
    ...guarded([tauName], () => {
      const formula = 'First-order rise through the thermistor, the first 45 s left out.';
      return [measured(tauName, timeConstant(riseOf(pointsOf(input))), { formula, evidence })];
    }),
    ...guarded([flagName], () => {
      const points = pointsOf(input);
      riseOf(points);
      const formula = `The same rise at ${(raceS / 60).toFixed(0)} min of such work, beyond the run with every time constant that it allows.`;
      return [measured(flagName, caseAt(input, points, raceS), { formula, evidence })];
    }),
  ];
}
