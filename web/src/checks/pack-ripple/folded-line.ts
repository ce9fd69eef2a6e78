// SPDX-License-Identifier: MIT
// The line of the controller's switching in the pack current. It is far above half the sampling rate and above the
// tap's filter, so it is seen folded, |f - n fs|, and small; where it must lie and how much smaller it is follows from
// its frequency, which the person knows. Pure.
import { uncertain, type Quantity } from '#core/measurements/quantity';
import {
  amplitudeAbout,
  floorOf,
  meanSpectrum,
  spectrumOf,
  strongestIn,
  type Spectrum,
} from '#core/measurements/spectrum';
import { gainLines, type Line, rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, tapOf } from '#core/measurements/tap-reading';
import { wholeRecord, type KeptBurst } from '../burst-wave.ts';
import type { AnalysisInput } from '../check.ts';
import type { Evidence } from './evidence.ts';
import { cornerOf } from './tap-corner.ts';

type Input = AnalysisInput<Evidence>;
/** How far a controller's frequency and the rig's clock may be off together; from memory and the rig description. */
const frequencyShare = 0.01;
/** Slow changes of the current lie below. */
const fromHz = 15;
/** Lines to either side that a sine's power spreads over, and what of it lies further out (computed). */
const reach = 4;
const spreadShare = 0.02;

export interface FoldedLine {
  /** Amplitude in the pack lead, A. */
  readonly amplitude: Quantity;
  /** Where it was seen; null: it does not stand out of the noise, and half of what could hide there is told. */
  readonly seenHz: number | null;
}
export function foldedLine(input: Input, bursts: readonly KeptBurst[], pwmHz: number): FoldedLine {
  const tap = tapOf(input.rig, 'packCurrentWide');
  const spectrum = meanSpectrum(
    bursts.map((burst) => spectrumOf(wholeRecord(input, burst), burst.intervalS)),
  );
  const [low, high] = foldedBand(pwmHz, 1 / bursts[0].intervalS);
  const strongest = strongestIn(spectrum, low, high);
  if (!strongest)
    throw new NotMeasurable(
      'The switching frequency falls on a multiple of the sampling rate, where its ripple looks like a constant current. Set another frequency in the controller, or enter the one it has.',
    );
  const floor = floorOf(spectrum, (high - low) / spectrum.stepHz);
  const corner = cornerOf(input, tap.id);
  const loss = Math.hypot(1, pwmHz / corner.hertz);
  if (strongest.amplitude < floor)
    return { amplitude: hidden(hiddenAtMost(spectrum, floor) * loss), seenHz: null };
  const atTap = amplitudeAbout(spectrum, strongest.hertz, reach);
  const lines: Line[] = [
    ...gainLines(input.rig, tap, atTap * loss, true),
    [typeA('line', 'noise within the line', spectrum.amplitude.length), noiseU(spectrum, atTap) * loss],
    [typeB('spread', 'power beyond the lines counted', 'computed'), rectangular(spreadShare * atTap * loss)],
    corner.line(atTap * loss),
  ];
  return { amplitude: uncertain(atTap * loss, lines), seenHz: strongest.hertz };
}
/** Along the line, and what the noise taken away may scatter by over all lines counted. */
function noiseU({ noise, records }: Spectrum, amplitude: number): number {
  const counted = 2 * reach + 1;
  return (
    Math.hypot(noise / Math.SQRT2, (noise ** 2 * Math.sqrt(counted)) / (2 * amplitude)) / Math.sqrt(records)
  );
}
/** What a sine midway between two lines leaves to each of them, sin(pi/2)/(pi/2). */
const midway = 2 / Math.PI;
/** The noise may take from a line as well as add to it: twice its share along the line. */
const hiddenAtMost = ({ noise, records }: Spectrum, floor: number): number =>
  (floor + 2 * (noise / Math.SQRT2 / Math.sqrt(records))) / midway;
const hidden = (most: number): Quantity =>
  uncertain(most / 2, [[typeB('hidden', 'a line that the noise hides', 'computed'), rectangular(most / 2)]]);

/** Where |f - n fs| may lie for all frequencies within the tolerance, above the slow changes. */
export function foldedBand(hertz: number, samplingHz: number): [number, number] {
  const away = Math.abs(hertz - Math.round(hertz / samplingHz) * samplingHz);
  const slack = frequencyShare * hertz;
  return [Math.max(fromHz, away - slack), Math.min(samplingHz / 2, away + slack)];
}
