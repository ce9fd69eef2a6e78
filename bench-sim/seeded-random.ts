// SPDX-License-Identifier: MIT
// The one source of chance of the virtual rig: xoshiro128** of Blackman and Vigna (prng.di.unimi.it, public
// domain), seeded through a 32-bit splitmix finaliser. It knows nothing of what is drawn; streams of different
// names are independent, so that one more draw in one room never shifts the draws of another.

export interface SeededRandom {
  /** Uniform 32-bit integer. */
  uint32(): number;
  /** Uniform in [0, 1). */
  unit(): number;
  /** Rectangular in [low, high). */
  between(low: number, high: number): number;
  /** Standard normal. */
  gaussian(): number;
  /** An independent stream that depends on the seed and the name only. */
  stream(name: string): SeededRandom;
}

const rotateLeft = (x: number, k: number): number => (x << k) | (x >>> (32 - k));

/** One step of xoshiro128** on its four words, in place. */
export function xoshiro128(state: Uint32Array): number {
  const result = Math.imul(rotateLeft(Math.imul(state[1], 5), 7), 9) >>> 0;
  const t = state[1] << 9;
  state[2] ^= state[0];
  state[3] ^= state[1];
  state[1] ^= state[2];
  state[0] ^= state[3];
  state[2] ^= t;
  state[3] = rotateLeft(state[3], 11);
  return result;
}

/** FNV-1a over the UTF-16 units of a name. */
function nameHash(name: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}

/** Finaliser of a 32-bit splitmix (constants after Murmur3's fmix32): spreads near seeds far apart. */
function mix(x: number): number {
  let z = x >>> 0;
  z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
  z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
  return (z ^ (z >>> 16)) >>> 0;
}

function initialState(seed: number, name: string): Uint32Array {
  const state = new Uint32Array(4);
  const start = mix(seed) ^ nameHash(name);
  for (let i = 0; i < 4; i++) state[i] = mix(start + Math.imul(i + 1, 0x9e3779b9));
  if (state.every((word) => word === 0)) state[0] = 1;
  return state;
}

/** Marsaglia's polar method; the second value of each pair is kept for the next call. */
function polarGaussian(unit: () => number): () => number {
  let kept = Number.NaN;
  return () => {
    if (!Number.isNaN(kept)) {
      const value = kept;
      kept = Number.NaN;
      return value;
    }
    let u = 0;
    let v = 0;
    let s = 0;
    do {
      u = 2 * unit() - 1;
      v = 2 * unit() - 1;
      s = u * u + v * v;
    } while (s >= 1 || s === 0);
    const factor = Math.sqrt((-2 * Math.log(s)) / s);
    kept = v * factor;
    return u * factor;
  };
}

export function seededRandom(seed: number, name = ''): SeededRandom {
  const state = initialState(seed, name);
  const uint32 = (): number => xoshiro128(state);
  const unit = (): number => xoshiro128(state) / 4294967296;
  return {
    uint32,
    unit,
    between: (low, high) => low + (high - low) * unit(),
    gaussian: polarGaussian(unit),
    stream: (child) => seededRandom(seed, `${name}/${child}`),
  };
}
