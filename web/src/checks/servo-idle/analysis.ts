// SPDX-License-Identifier: MIT
// servo-idle: holding current at centre, what of it alternates (hunting), and the dead band. Pure.
import { guarded, measured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { reading, steadyOf, trimmedReading, zeroOf } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import { deadBandOf } from './dead-band.ts';
import type { Evidence } from './evidence.ts';
import { alternatingOf } from './hunting.ts';

export const results = [
  { id: 'centre-current', title: 'Holding current at centre', unit: 'A', level: 'railCurrent' },
  { id: 'hunting-current', title: 'Hunting: alternating current at rest', unit: 'A' },
  { id: 'hunting-pulses', title: 'Hunting: pulses of current a second', unit: 'Hz' },
  { id: 'dead-band', title: 'Dead band', unit: 'us' },
] as const;
type Input = AnalysisInput<Evidence>;

export const analyse = (input: Input): readonly Finding[] => [
  ...guarded(results.slice(0, 1), () => [holding(input)]),
  ...guarded(results.slice(1, 3), () => hunting(input)),
  ...guarded(results.slice(3), () => [deadBand(input)]),
];
const seenAt = ({ evidence }: Input) => [{ ...evidence.rest, taps: ['railCurrent'] }];

function holding(input: Input): Finding {
  const { rest } = input.evidence;
  const volts = reading(input, 'railVoltage', rest).value;
  const current = trimmedReading(input, 'railCurrent', rest, zeroOf(input, 'railCurrent'));
  return measured(results[0], current, {
    formula:
      'Mean rail current with the horn free at neutral, its own zero taken away; at the rail as it was.',
    evidence: seenAt(input),
    notes: [`Rail ${volts.toFixed(2)} V.`],
  });
}
function hunting(input: Input): Finding[] {
  const { rms, pulsesPerS } = alternatingOf(input, input.evidence.rest);
  const evidence = seenAt(input);
  return [
    measured(results[1], rms, {
      formula: "r.m.s. of the rail current without its mean, the tap's own noise taken out.",
      evidence,
    }),
    measured(results[2], pulsesPerS, {
      formula: 'Rises of the current through its mean; 0 where nothing alternates beyond the noise.',
      evidence,
      notes: ['A servo that hunts draws one pulse each way: it swings half as often.'],
    }),
  ];
}
function deadBand(input: Input): Finding {
  const { rest, ramps } = input.evidence;
  const quantity = deadBandOf(input, steadyOf(input, 'railCurrent', rest).mean);
  return measured(results[3], quantity, {
    formula: 'Half of the way that a slow pulse goes back after a turn until the servo draws current again.',
    evidence: ramps.map((ramp) => ({ ...ramp, taps: ['railCurrent'] })),
  });
}
