// SPDX-License-Identifier: MIT
// The lines of an evenly sampled wave, by the library fft.js: amplitudes over frequency, the noise between them, and
// the wave that the lines above the noise make by themselves. It knows numbers only.
import FFT from 'fft.js';
import jstat from 'jstat';
import { mean, median } from 'simple-statistics';

export interface Spectrum {
  /** Hz from one line to the next. */
  readonly stepHz: number;
  /** Of each line, 0 to half the sampling rate; the mean is taken away. */
  readonly amplitude: Float64Array;
  /** Root mean square of the amplitudes that noise alone gives. */
  readonly noise: number;
  /** Records whose powers were averaged. */
  readonly records: number;
}
export interface WholeSpectrum extends Spectrum {
  /** Complex values, real and imaginary by turns, of all lines. */
  readonly lines: readonly number[];
}
/** The longest start whose length is a power of two counts; at least 16 values. */
export function spectrumOf(values: ArrayLike<number>, intervalS: number): WholeSpectrum {
  const size = 2 ** Math.floor(Math.log2(values.length));
  if (!(size >= 16)) throw new RangeError(`a spectrum needs at least 16 values, not ${values.length}`);
  const used = Array.from(values).slice(0, size);
  const middle = mean(used);
  const transform = new FFT(size);
  const lines = transform.createComplexArray() as number[];
  const centred = used.map((value) => value - middle);
  transform.realTransform(lines, centred);
  transform.completeSpectrum(lines);
  const amplitude = Float64Array.from(
    { length: size / 2 },
    (_, k) => (2 * Math.hypot(lines[2 * k], lines[2 * k + 1])) / size,
  );
  return { stepHz: 1 / (size * intervalS), amplitude, noise: noiseOf(amplitude, 1), records: 1, lines };
}
/** Powers of several records of one length averaged: the noise scatters less, a line that stays does not. */
export function meanSpectrum(all: readonly Spectrum[]): Spectrum {
  const [first] = all;
  if (!first) throw new RangeError('a mean spectrum needs at least one');
  const amplitude = first.amplitude.map((_, k) => Math.sqrt(mean(all.map((one) => one.amplitude[k] ** 2))));
  return { stepHz: first.stepHz, amplitude, noise: noiseOf(amplitude, all.length), records: all.length };
}
/** From the median, which lines hardly move. Powers of noise go as chi-squared of two degrees of freedom a record,
 *  whose median is (1 - 1/(9 n))^3 of its mean (Wilson and Hilferty, 1931: from memory). */
function noiseOf(amplitude: Float64Array, records: number): number {
  const power = median(Array.from(amplitude.subarray(1), (a) => a * a));
  return Math.sqrt(power / (1 - 1 / (9 * records)) ** 3);
}
/** Amplitude that noise reaches in one of `among` lines once in a thousand times. */
export function floorOf({ noise, records }: Spectrum, among: number): number {
  return noise * Math.sqrt(jstat.chisquare.inv(1 - 1e-3 / among, 2 * records) / (2 * records));
}
export interface Strongest {
  readonly hertz: number;
  readonly amplitude: number;
}
/** The highest line within a band; null where the band holds none. */
export function strongestIn({ amplitude, stepHz }: Spectrum, fromHz: number, toHz: number): Strongest | null {
  const first = Math.max(1, Math.ceil(fromHz / stepHz));
  const last = Math.min(amplitude.length - 1, Math.floor(toHz / stepHz));
  if (last < first) return null;
  let at = first;
  for (let k = first; k <= last; k++) if (amplitude[k] > amplitude[at]) at = k;
  return { hertz: at * stepHz, amplitude: amplitude[at] };
}
/** Amplitude of one sine whose line is spread over its neighbours: their power together, less the noise's. */
export function amplitudeAbout({ amplitude, stepHz, noise }: Spectrum, hertz: number, reach: number): number {
  const middle = Math.round(hertz / stepHz);
  const near = Array.from(amplitude.subarray(Math.max(1, middle - reach), middle + reach + 1));
  return Math.sqrt(
    Math.max(
      0,
      near.reduce((sum, a) => sum + a * a - noise * noise, 0),
    ),
  );
}
export interface Standing {
  readonly peakToPeak: number;
  /** Root of the mean square, without the mean. */
  readonly rms: number;
  /** How many lines stood out. */
  readonly count: number;
}
/** Where a wave that does not close on itself swings beyond its size: this share of it at either end. */
const endShare = 0.1;
/** What the lines above `floor` make together, noise between them left out. */
export function standingOut({ lines, amplitude }: WholeSpectrum, floor: number): Standing {
  const size = lines.length / 2;
  const keeps = (k: number) => k > 0 && k < amplitude.length && amplitude[k] > floor;
  const kept = lines.map((value, i) => (keeps(Math.min(i >> 1, size - (i >> 1))) ? value : 0));
  const transform = new FFT(size);
  const wave = transform.createComplexArray() as number[];
  transform.inverseTransform(wave, kept);
  const real = wave.filter((_, i) => i % 2 === 0);
  const rms = Math.sqrt(mean(real.map((v) => v * v)));
  const inner = real.slice(Math.floor(endShare * size), Math.ceil((1 - endShare) * size));
  const [low, high] = inner.reduce(([l, h], v) => [Math.min(l, v), Math.max(h, v)], [0, 0]);
  return { peakToPeak: high - low, rms, count: Array.from(amplitude, (_, k) => k).filter(keeps).length };
}
