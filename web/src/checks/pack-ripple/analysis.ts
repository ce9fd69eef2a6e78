// SPDX-License-Identifier: MIT
// pack-ripple: what the capacitor leaves to the pack of the current that the controller's pulses draw. A sound one
// keeps most of it away from the leads; a dried one, whose charge curve looks well, lets it through. Pure.
import { combined, uncertain, type Quantity } from '#core/measurements/quantity';
import { guarded, measured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { rectangular, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, reading } from '#core/measurements/tap-reading';
import { stretchOf } from '../burst-wave.ts';
import type { AnalysisInput } from '../check.ts';
import { requireProven } from '../proven-spin.ts';
import type { Evidence } from './evidence.ts';
import { foldedLine } from './folded-line.ts';
import { opening } from './procedure.ts';

export const results = [
  { id: 'ripple-share', title: 'Ripple that the capacitor lets through', unit: '%' },
] as const;
type Input = AnalysisInput<Evidence>;
/** Dead band and end of the throttle's travel move the duty about the opening by so much; from memory. */
const dutyHalfWidth = 0.03;

export const analyse = (input: Input): readonly Finding[] => guarded(results, () => [shareOf(input)]);

function shareOf(input: Input): Finding {
  const { half, bursts, idle } = input.evidence;
  requireProven(input.evidence);
  const { pwmHz } = input.car.controller;
  if (!half || bursts.length === 0) throw new NotMeasurable('Half throttle was not reached. Run again.');
  if (pwmHz === undefined)
    throw new NotMeasurable(
      "The controller's switching frequency is not known. Take it from its manual or its setting, enter it with the controller, and run again.",
    );
  const { amplitude, seenHz } = foldedLine(input, bursts, pwmHz);
  const share = combined([amplitude, pulsedA(input, half, idle)], (a, pulsed) => (100 * a) / pulsed);
  return measured(results[0], share, {
    formula: `Ripple current in the pack lead at ${(pwmHz / 1e3).toFixed(2)} kHz, the tap's filter undone, over the fundamental of the pulsed current, (2 I / pi) sin(pi d), of a smooth motor current I at duty d.`,
    evidence: [...bursts.map(stretchOf), { ...half, taps: ['packCurrentNarrow'] }],
    notes: rippleWords(amplitude.value, seenHz),
  });
}
/** Fundamental of the current that the controller draws in pulses; its mean is d I. */
function pulsedA(
  input: Input,
  half: { fromS: number; toS: number },
  idle: { fromS: number; toS: number },
): Quantity {
  const amps = (stretch: typeof half) => reading(input, 'packCurrentNarrow', stretch);
  const duty = uncertain(opening, [
    [typeB('duty', 'duty at half throttle', 'rule of thumb, from memory'), rectangular(dutyHalfWidth)],
  ]);
  return combined(
    [amps(half), amps(idle), duty],
    (on, off, d) => ((2 * (on - off)) / (Math.PI * d)) * Math.sin(Math.PI * d),
  );
}
function rippleWords(amplitudeA: number, seenHz: number | null): string[] {
  if (seenHz === null)
    return ['The ripple does not stand out of the noise; half of what could hide there is told.'];
  const [peaks, rms] = [2 * amplitudeA, amplitudeA * Math.SQRT1_2].map((amps) => amps.toPrecision(2));
  return [
    `In the pack lead ${peaks} A peak to peak, ${rms} A r.m.s., seen folded at ${seenHz.toFixed(0)} Hz.`,
  ];
}
