// SPDX-License-Identifier: MIT
// Orders over an angle against a general library's fast Fourier transform of the same samples.
import { orderFit } from '#core/measurements/order-fit';
import { fixture } from './fixture-file.ts';
import type { OutsideCheck } from './outside-check.ts';

const spectrum = fixture('order-spectrum');
const samples = 288;
const turns = 3;
const angle = Array.from({ length: samples }, (_, k) => (2 * Math.PI * turns * k) / samples);
const signal = (a: number): number =>
  2.5 +
  0.8 * Math.cos(a) -
  0.3 * Math.sin(a) +
  0.25 * Math.cos(2 * a + 0.7) +
  0.1 * Math.sin(5 * a - 0.2) +
  0.05 * Math.exp(Math.cos(a));
/** The drift columns are not orthogonal to so few turns, so orders and drift share a little: 4 is asked for as well. */
const fit = orderFit(angle, angle.map(signal), [1, 2, 3, 4, 5]);

export const orders: readonly OutsideCheck[] = [
  {
    source: spectrum.source,
    code: '`orderFit`',
    cases: spectrum.orders.flatMap(({ order, cos, sin }) => {
      const found = () => fit?.harmonics.find((harmonic) => harmonic.order === order);
      return [
        { name: `order ${order}, cosine`, expected: cos, got: () => found()?.cos ?? null, within: 1e-5 },
        { name: `order ${order}, sine`, expected: sin, got: () => found()?.sin ?? null, within: 1e-5 },
      ];
    }),
  },
];
