// SPDX-License-Identifier: MIT
// The spectrum against a second way: the sum of the definition (discrete Fourier transform, term by term), Parseval's
// theorem, and sines of known size; what stands out of noise against what was put in.
import { describe, expect, it } from 'vitest';
import { seededNoise } from './seeded-noise-fixture.ts';
import { amplitudeAbout, floorOf, meanSpectrum, spectrumOf, standingOut, strongestIn } from './spectrum.ts';

const intervalS = 104e-6;
const wave = (size: number, of: (t: number, k: number) => number) =>
  Array.from({ length: size }, (_, k) => of(k * intervalS, k));
const sine = (hertz: number, amplitude: number) => (t: number) =>
  amplitude * Math.sin(2 * Math.PI * hertz * t + 0.4);

describe('a spectrum', () => {
  it('is refused for fewer than 16 values', () =>
    expect(() => spectrumOf([1, 2, 3], intervalS)).toThrow(/at least 16/));
  it('is that of the definition, line by line', () => {
    const noise = seededNoise(5);
    const values = wave(64, () => 3 + noise());
    const { amplitude } = spectrumOf(values, intervalS);
    for (let k = 1; k < 32; k++) {
      let real = 0;
      let imaginary = 0;
      values.forEach((v, n) => {
        real += v * Math.cos((2 * Math.PI * k * n) / 64);
        imaginary -= v * Math.sin((2 * Math.PI * k * n) / 64);
      });
      expect(amplitude[k]).toBeCloseTo((2 * Math.hypot(real, imaginary)) / 64, 12);
    }
  });
  it('holds the power of the wave (Parseval)', () => {
    const noise = seededNoise(6);
    const values = wave(1024, (t) => sine(777, 0.2)(t) + noise());
    const middle = values.reduce((sum, v) => sum + v, 0) / 1024;
    const square = values.reduce((sum, v) => sum + (v - middle) ** 2, 0) / 1024;
    const { lines } = spectrumOf(values, intervalS);
    expect(lines.reduce((sum, v) => sum + v * v, 0) / 1024 ** 2).toBeCloseTo(square, 9);
  });
  it('uses the longest power of two of a longer record', () =>
    expect(spectrumOf(wave(1500, sine(500, 1)), intervalS).amplitude).toHaveLength(512));
});
describe('lines of a spectrum', () => {
  const noise = seededNoise(7);
  const spectrum = spectrumOf(
    wave(4096, (t) => sine(1234, 0.1)(t) + 0.01 * noise()),
    intervalS,
  );
  it('names the strongest within a band, null for a band without lines', () => {
    expect(strongestIn(spectrum, 1000, 1500)!.hertz).toBeCloseTo(1234, -1);
    expect(strongestIn(spectrum, 1000.1, 1000.2)).toBeNull();
  });
  it('gives the size of a sine between two lines back to 1 %', () =>
    expect(amplitudeAbout(spectrum, strongestIn(spectrum, 10, 4000)!.hertz, 12)).toBeCloseTo(0.1, 2));
  it('gives next to nothing where only noise is', () =>
    expect(amplitudeAbout(spectrum, 3000, 8)).toBeLessThan(0.0015));
  it('gives peak to peak and r.m.s. of what stands out, without its noise', () => {
    const { peakToPeak, rms } = standingOut(spectrum, floorOf(spectrum, 2048));
    expect(Math.abs(peakToPeak / 0.2 - 1)).toBeLessThan(0.06);
    expect(rms).toBeCloseTo(0.1 * Math.SQRT1_2, 3);
  });
  it('finds nothing in noise alone', () => {
    const quiet = seededNoise(8);
    const alone = spectrumOf(
      wave(2048, () => 0.01 * quiet()),
      intervalS,
    );
    expect(standingOut(alone, floorOf(alone, 1024))).toEqual({ peakToPeak: 0, rms: 0, count: 0 });
  });
  it('knows the noise: a root mean square of 2 s / root n', () => {
    const quiet = seededNoise(10);
    const alone = spectrumOf(wave(4096, () => 0.01 * quiet()), intervalS); // prettier-ignore
    expect(alone.noise / ((2 * 0.01) / Math.sqrt(4096))).toBeCloseTo(1, 1);
  });
});
describe('powers of six records averaged', () => {
  const noise = seededNoise(9);
  const records = Array.from({ length: 6 }, (_, k) =>
    spectrumOf(
      wave(1024, (t) => 0.0014 * Math.sin(2 * Math.PI * 2000 * t + k) + 0.01 * noise()),
      intervalS,
    ),
  );
  const six = meanSpectrum(records);
  it('need at least one', () => expect(() => meanSpectrum([])).toThrow(/at least one/));
  it('show a line that each record hides', () => {
    const shown = records.filter((one) => strongestIn(one, 1990, 2010)!.amplitude > floorOf(one, 512));
    expect(shown.length).toBeLessThan(2);
    expect(strongestIn(six, 1990, 2010)!.amplitude).toBeGreaterThan(floorOf(six, 512));
  });
  it('keep its size', () => expect(amplitudeAbout(six, 2000, 2) / 0.0014).toBeCloseTo(1, 0));
  it('leave the noise as it is, with less scatter', () => {
    expect(six.noise / records[0].noise).toBeCloseTo(1, 1);
    expect(floorOf(six, 512)).toBeLessThan(0.65 * floorOf(records[0], 512));
  });
  // Chi-squared of two degrees of freedom: P(power > x) = exp(-x / mean).
  it('have the floor of the exponential law for one record', () =>
    expect(floorOf(records[0], 512) / records[0].noise).toBeCloseTo(Math.sqrt(Math.log(512_000)), 6));
});
