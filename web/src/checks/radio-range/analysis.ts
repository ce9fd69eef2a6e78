// SPDX-License-Identifier: MIT
// radio-range: widths of both channels in each position, travels, jitter, frames a second, and which channel follows
// the wheel. Pure.
import { guarded, measured, type ResultName } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { framesPerS, jitterOf } from '#core/measurements/pulse-reading';
import { combined, difference, exact, type Quantity } from '#core/measurements/quantity';
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import { unpowered } from '../receiver-power.ts';
import type { Evidence, Position } from './evidence.ts';
import { heardPositions, type Channel, type Heard } from './heard-positions.ts';

export const results = [
  { id: 'wheel-channel', title: 'Channel that follows the wheel', unit: 'channel' },
  { id: 'steering-left', title: 'Steering, wheel fully left', unit: 'us' },
  { id: 'steering-centre', title: 'Steering, wheel at rest', unit: 'us' },
  { id: 'steering-right', title: 'Steering, wheel fully right', unit: 'us' },
  { id: 'steering-per-cent', title: 'Steering, for each per cent of the wheel', unit: 'us' },
  { id: 'throttle-brake', title: 'Throttle, full brake', unit: 'us' },
  { id: 'throttle-neutral', title: 'Throttle, trigger at rest', unit: 'us' },
  { id: 'throttle-full', title: 'Throttle, trigger fully pulled', unit: 'us' },
  { id: 'throttle-travel', title: 'Full throttle beyond neutral', unit: 'us' },
  { id: 'brake-travel', title: 'Full brake before neutral', unit: 'us' },
  { id: 'radio-jitter', title: 'Jitter of a pulse', unit: 'us' },
  { id: 'radio-frames', title: 'Frames of the receiver', unit: 'Hz' },
] as const;
type Id = (typeof results)[number]['id'];
type Input = AnalysisInput<Evidence>;

export function analyse(input: Input): readonly Finding[] {
  return guarded(results, () => {
    if (!input.evidence.powered) throw new NotMeasurable(unpowered);
    const heard = heardPositions(input.evidence, input.samples);
    return [
      channelOf(input, heard),
      ...steeringOf(input, heard),
      ...throttleOf(input, heard),
      ...signalOf(input),
    ];
  });
}
const nameOf = (id: Id): ResultName => results.find((result) => result.id === id)!;

function channelOf(input: Input, { wheelOn, triggerOn }: Heard): Finding {
  const crossed = wheelOn === 1 && triggerOn === 0;
  return measured(nameOf('wheel-channel'), exact(wheelOn + 1), {
    formula: 'Number of the receiver channel whose pulses moved with the wheel.',
    evidence: stretchesOf(input, ['left', 'right'], wheelOn),
    notes: crossed
      ? [
          'Channels crossed: the wheel moves channel 2, the trigger channel 1. Swap the two plugs at the receiver.',
        ]
      : [],
  });
}
function steeringOf(input: Input, heard: Heard): Finding[] {
  const { wheelOn: on } = heard;
  const [left, right] = [heard.width(on, 'left'), heard.width(on, 'right')];
  const perCent = combined([left, right], (l, r) => Math.abs(r - l) / 200);
  const leftIs = left.value < right.value ? 'shorter' : 'longer';
  const ends = stretchesOf(input, ['left', 'right'], on);
  return [
    width(input, 'steering-left', left, on, ['left']),
    width(input, 'steering-centre', heard.rest(on), on, ['rest', 'rest again']),
    width(input, 'steering-right', right, on, ['right']),
    measured(nameOf('steering-per-cent'), perCent, {
      formula: 'Distance from fully left to fully right over 200 per cent.',
      evidence: ends,
      notes: [`Left is the ${leftIs} pulse.`],
    }),
  ];
}
function throttleOf(input: Input, heard: Heard): Finding[] {
  const { triggerOn: on } = heard;
  const [brake, full] = [heard.width(on, 'brake'), heard.width(on, 'full')];
  const neutral = heard.rest(on);
  const reversed = full.value < neutral.value;
  return [
    width(input, 'throttle-brake', brake, on, ['brake']),
    width(input, 'throttle-neutral', neutral, on, ['rest', 'rest again']),
    width(input, 'throttle-full', full, on, ['full']),
    measured(nameOf('throttle-travel'), difference(full, neutral), {
      formula: 'Width at full throttle less width at rest.',
      evidence: stretchesOf(input, ['full', 'rest'], on),
      notes: reversed
        ? [
            'The throttle channel is reversed: full throttle gives the shorter pulse. Turn it round at the radio, then teach the controller its range again.',
          ]
        : [],
    }),
    measured(nameOf('brake-travel'), difference(neutral, brake), {
      formula: 'Width at rest less width at full brake.',
      evidence: stretchesOf(input, ['brake', 'rest'], on),
    }),
  ];
}
function width(input: Input, id: Id, value: Quantity, on: Channel, at: readonly Position[]): Finding {
  return measured(nameOf(id), value, {
    formula: `Mean width of the pulses on channel ${on + 1} while this was held.`,
    evidence: stretchesOf(input, at, on),
  });
}
/** Both channels at rest: there the driver's hand adds nothing. */
function signalOf(input: Input): Finding[] {
  const rests = ([0, 1] as const).flatMap((on) => stretchesOf(input, ['rest', 'rest again'], on));
  return [
    measured(nameOf('radio-jitter'), jitterOf(input.samples, rests), {
      formula: 'Standard deviation of the width of one pulse, wheel and trigger at rest, both channels.',
      evidence: rests,
    }),
    measured(nameOf('radio-frames'), framesPerS(input.samples, rests[0]), {
      formula: 'One over the mean time from pulse to pulse on channel 1.',
      evidence: rests.slice(0, 1),
    }),
  ];
}
const stretchesOf = ({ evidence }: Input, at: readonly Position[], on: Channel) =>
  evidence.held
    .filter(({ position }) => at.includes(position))
    .map(({ channels }) => ({ ...channels[on], taps: [] as string[] }));
