// SPDX-License-Identifier: MIT
// A list of those who want to hear of something. It knows nothing of what is told.

export class Listeners<T> {
  private readonly all = new Set<(told: T) => void>();

  /** Returns a function that ends the listening. */
  add(listener: (told: T) => void): () => void {
    this.all.add(listener);
    return () => {
      this.all.delete(listener);
    };
  }
  tell(told: T): void {
    for (const listener of this.all) listener(told);
  }
}
