// SPDX-License-Identifier: MIT
// A thermistor's curve after Steinhart and Hart, Deep-Sea Research 15 (1968) 497: 1/T = A + B ln R + C (ln R)^3,
// through three points. The B equation bends away from a maker's table by kelvins; this by hundredths.

export type SteinhartHart = readonly [a: number, b: number, c: number];
export type ThermistorPoint = readonly [celsius: number, ohm: number];
const kelvinAtZeroC = 273.15;

export function steinhartHart(
  points: readonly [ThermistorPoint, ThermistorPoint, ThermistorPoint],
): SteinhartHart {
  const [l1, l2, l3] = points.map(([, ohm]) => Math.log(ohm));
  const [y1, y2, y3] = points.map(([celsius]) => 1 / (celsius + kelvinAtZeroC));
  const near = (y2 - y1) / (l2 - l1);
  const far = (y3 - y1) / (l3 - l1);
  const c = (far - near) / (l3 - l2) / (l1 + l2 + l3);
  const b = near - c * (l1 * l1 + l1 * l2 + l2 * l2);
  return [y1 - (b + l1 * l1 * c) * l1, b, c];
}
export function steinhartHartC([a, b, c]: SteinhartHart, ohm: number): number {
  const l = Math.log(ohm);
  return 1 / (a + b * l + c * l ** 3) - kelvinAtZeroC;
}
