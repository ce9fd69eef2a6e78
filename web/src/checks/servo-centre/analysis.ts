// SPDX-License-Identifier: MIT
// servo-centre: from two readings of the horn to how far it is off straight, the sub-trim that takes that away, and
// the way it turns. Pure.
import { guarded, measured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { combined, linear, type Quantity } from '#core/measurements/quantity';
import type { AnalysisInput } from '../check.ts';
import { degreesPerUs, hornReading } from '../protractor.ts';
import type { Evidence } from './evidence.ts';

export const results = [
  { id: 'horn-offset', title: 'Horn off straight', unit: 'degrees' },
  { id: 'sub-trim', title: 'Sub-trim that is left', unit: 'us' },
  { id: 'degrees-per-us', title: 'Turn for a longer pulse', unit: 'degrees/us' },
] as const;
type Input = AnalysisInput<Evidence>;

export function analyse({ evidence }: Input): readonly Finding[] {
  const { atCentreDegrees, longerDegrees, longerByUs, rest } = evidence;
  const first = hornReading('at the centre', atCentreDegrees);
  const second = hornReading('with a longer pulse', longerDegrees);
  const seen = [{ ...rest, taps: ['railVoltage'] }];
  return [
    measured(results[0], away(first), {
      formula: 'Size of the first reading of the protractor.',
      evidence: seen,
    }),
    ...guarded(results.slice(1), () => {
      const perUs = degreesPerUs(first, second, longerByUs);
      return [
        measured(
          results[1],
          combined([first, perUs], (off, per) => -off / per),
          {
            formula:
              'First reading over degrees a microsecond: so much longer a pulse brings the horn straight.',
            evidence: seen,
            notes: [
              'Positive: a longer pulse. Enter it as sub-trim at the radio, and set the end points after it.',
            ],
          },
        ),
        measured(results[2], perUs, {
          formula: `Difference of the two readings over ${longerByUs} µs.`,
          evidence: seen,
          notes: [turnWords(perUs.value)],
        }),
      ];
    }),
  ];
}
const away = (off: Quantity): Quantity => linear([[off.value < 0 ? -1 : 1, off]]);
const turnWords = (perUs: number): string =>
  `A longer pulse turns the horn ${perUs > 0 ? 'clockwise' : 'anticlockwise'}, seen from above it. If the wheels go the wrong way, reverse the channel at the radio.`;
