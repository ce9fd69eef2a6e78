// SPDX-License-Identifier: MIT
// Copper as wire and as thermometer: annealed copper of 1/58 ohm mm2/m with 0.00393 per kelvin at 20 C
// (IEC 60287-1-1), gauges after ASTM B258, winding temperature by resistance after IEC 60034-1.

/** 100 % IACS at 20 C, ohm metre. */
export const copperOhmM = 1e-6 / 58;
export const copperPerK = 0.00393;
/** -235 C: where the straight line of copper's resistance in IEC 60034-1 meets zero. */
const zeroResistanceK = 235;

/** Diameter of a gauge, m: 0.005 in at 36, 0.46 in at 0000, even ratios between. */
export const gaugeDiameterM = (gauge: number): number => 0.127e-3 * 92 ** ((36 - gauge) / 39);
/** Ohms of a metre of solid wire. */
export function gaugeOhmPerM(gauge: number, celsius = 20): number {
  const areaM2 = (Math.PI / 4) * gaugeDiameterM(gauge) ** 2;
  return (copperOhmM / areaM2) * (1 + copperPerK * (celsius - 20));
}
/** Mean temperature of a winding from its resistance cold (at a known temperature) and warm. */
export const windingC = (coldOhm: number, coldC: number, warmOhm: number): number =>
  (warmOhm / coldOhm) * (zeroResistanceK + coldC) - zeroResistanceK;
