// SPDX-License-Identifier: MIT
// The lines of an evenly sampled wave, by the library fft.js: amplitudes over frequency, the noise between them, and
// the wave that the lines above the noise make by themselves. It knows numbers only.
import FFT from 'fft.js';
import { mean, median } from 'simple-statistics';

export interface Spectrum {
  /** Hz from one line to the next. */
  readonly stepHz: number;
  /** Of each line, 0 to half the sampling rate; the mean is taken away. */
  readonly amplitude: Float64Array;
  /** Amplitude that noise alone gives in the middle of all lines. */
  readonly noise: number;
  /** Complex values, real and imaginary by turns, of all lines. */
  readonly lines: readonly number[];
}
/** The longest start whose length is a power of two counts; at least 16 values. */
export function spectrumOf(values: ArrayLike<number>, intervalS: number): Spectrum {
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
  return {
    stepHz: 1 / (size * intervalS),
    amplitude,
    noise: median(Array.from(amplitude.subarray(1))),
    lines,
  };
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
/** Amplitude of one sine whose line is spread over its neighbours: their power together, less the noise's. Noise
 *  alone has a mean square of amplitudes of median^2 / ln 2 (Rayleigh). */
export function amplitudeAbout({ amplitude, stepHz, noise }: Spectrum, hertz: number, reach: number): number {
  const middle = Math.round(hertz / stepHz);
  const near = Array.from(amplitude.subarray(Math.max(1, middle - reach), middle + reach + 1));
  const power = near.reduce((sum, a) => sum + a * a, 0) - (near.length * noise ** 2) / Math.LN2;
  return Math.sqrt(Math.max(0, power));
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
export function standingOut({ lines, amplitude }: Spectrum, floor: number): Standing {
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
