// SPDX-License-Identifier: MIT
// The browser's small memory for settings; where that is refused, one that lasts while the page is open.

export type SmallMemory = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

export function smallMemory(): SmallMemory {
  try {
    return localStorage;
  } catch {
    const kept = new Map<string, string>();
    return {
      getItem: (name) => kept.get(name) ?? null,
      setItem: (name, text) => void kept.set(name, text),
      removeItem: (name) => void kept.delete(name),
    };
  }
}
