// SPDX-License-Identifier: MIT
// Copper's resistance against temperature: R = R20 (1 + 0.00393 (t - 20)), the constants of IEC 60287-1-1.

export const copperPerK = 0.00393;
export const copperFactor = (celsius: number): number => 1 + copperPerK * (celsius - 20);
/** Magnet flux against its value at 25 C; -0.11 %/K, from memory for the usual sintered rotors. */
export const fluxFactor = (celsius: number): number => 1 - 0.0011 * (celsius - 25);
