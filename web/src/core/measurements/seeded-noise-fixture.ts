// SPDX-License-Identifier: MIT
// Normal noise of unit deviation for tests, the same for the same seed (Lehmer, 48271 mod 2^31 - 1; Box-Muller).

export function seededNoise(seed: number): () => number {
  let state = seed;
  const unit = () => (state = (state * 48271) % 2147483647) / 2147483647;
  return () => Math.sqrt(-2 * Math.log(unit())) * Math.cos(2 * Math.PI * unit());
}
