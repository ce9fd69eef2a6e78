// SPDX-License-Identifier: MIT
// rail-ripple: what of the rail alternates, from bursts: the lines that stand out of the converter's noise, put
// together again. In the tap's own bandwidth; faster ripple is seen folded and smaller than it is. Pure.
import { uncertain, type Quantity } from '#core/measurements/quantity';
import { guarded, measured, type ResultName } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import {
  floorOf,
  spectrumOf,
  standingOut,
  strongestIn,
  type Spectrum,
  type Standing,
} from '#core/measurements/spectrum';
import { gainLines, type Line, ownShare, rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, tapOf } from '#core/measurements/tap-reading';
import { stepOf } from '#core/samples/tap-scaling';
import { stretchOf, wholeRecord, type KeptBurst } from '../burst-wave.ts';
import type { AnalysisInput } from '../check.ts';
import type { Evidence } from './evidence.ts';

export const results = [
  { id: 'rail-ripple-pp', title: 'Ripple of the rail, peak to peak', unit: 'V' },
  { id: 'rail-ripple-rms', title: 'Ripple of the rail, r.m.s.', unit: 'V' },
] as const;
type Input = AnalysisInput<Evidence>;
/** Tolerance of a tap's corner; from memory. */
const cornerShare = 0.1;
/** Frequencies to the nearest line. */
const fromHz = 5;

export function analyse(input: Input): readonly Finding[] {
  return guarded(results, () => {
    const worst = worstOf(input);
    const [peaks, rms] = results;
    return [
      told(peaks, input, worst, quantity(input, worst, worst.standing.peakToPeak, 2)),
      told(rms, input, worst, quantity(input, worst, worst.standing.rms, Math.SQRT1_2)),
    ];
  });
}
interface Ripple {
  readonly burst: KeptBurst;
  readonly spectrum: Spectrum;
  readonly standing: Standing;
}
function worstOf(input: Input): Ripple {
  const found = input.evidence.bursts.map((burst) => rippleOf(input, burst));
  const [worst] = found.toSorted((a, b) => b.standing.peakToPeak - a.standing.peakToPeak);
  if (!worst) throw new NotMeasurable('No burst of the rail was recorded. Run again.');
  return worst;
}
function rippleOf(input: Input, burst: KeptBurst): Ripple {
  const spectrum = spectrumOf(wholeRecord(input, burst), burst.intervalS);
  return { burst, spectrum, standing: standingOut(spectrum, floorOf(spectrum, spectrum.amplitude.length)) };
}
/** `perAmplitude` is what one sine of amplitude 1 makes of the figure. */
function quantity(
  input: Input,
  { spectrum, standing }: Ripple,
  value: number,
  perAmplitude: number,
): Quantity {
  const { rig, samples } = input;
  const tap = tapOf(rig, 'railVoltage');
  const { volts } = samples.supply(0, samples.latestS);
  const missed = floorOf(spectrum, spectrum.amplitude.length) * perAmplitude;
  const noise = spectrum.noise * Math.sqrt(standing.count / 2) * perAmplitude;
  const lines: Line[] = [
    ...gainLines(rig, tap, value, true),
    [typeB('missed', 'lines that do not stand out of the noise', 'computed'), rectangular(missed)],
    [typeA('noise', 'noise within the lines', spectrum.amplitude.length), noise],
    [
      typeB('corner', 'bandwidth of the tap', 'rule of thumb, from memory'),
      cornerU(spectrum, tap.cornerHz, value),
    ],
  ];
  if (standing.count > 0)
    lines.push(leanLine(ownShare * tap.error.inlLsb * stepOf(tap, volts) * perAmplitude));
  return uncertain(value, lines);
}
const leanLine = (halfWidth: number): Line => [
  typeB('lean', 'converter non-linearity over the ripple', 'rig description'),
  rectangular(halfWidth),
];
/** A one-pole filter's gain moves by x^2/(1 + x^2) of what its corner is off, x the frequency over the corner. */
function cornerU(spectrum: Spectrum, cornerHz: number, value: number): number {
  const x2 = (mainHz(spectrum) / cornerHz) ** 2;
  return rectangular(((cornerShare * x2) / (1 + x2)) * value);
}
const mainHz = (spectrum: Spectrum): number =>
  strongestIn(spectrum, fromHz, Number.POSITIVE_INFINITY)?.hertz ?? 0;

function told(name: ResultName, input: Input, { spectrum, standing }: Ripple, value: Quantity): Finding {
  const { cornerHz } = tapOf(input.rig, 'railVoltage');
  return measured(name, value, {
    formula: `The lines that stand out of the converter's noise, put together, in the larger of two bursts; below ${cornerHz} Hz, as the tap sees it.`,
    evidence: input.evidence.bursts.map(stretchOf),
    notes: [
      standing.count > 0
        ? `Mostly at ${mainHz(spectrum).toFixed(0)} Hz, if it is not a faster ripple seen folded.`
        : 'Nothing stands out of the noise.',
    ],
  });
}
