// SPDX-License-Identifier: MIT
// Day or night: the system's choice unless the person made one. It sets one attribute on the root.

export type ThemeChoice = 'system' | 'day' | 'night';
interface Memory {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}

export class Theme {
  #choice = $state<ThemeChoice>('system');

  constructor(
    private readonly root: { dataset: DOMStringMap },
    private readonly memory: Memory,
    private readonly dark: { readonly matches: boolean },
  ) {
    const kept = memory.getItem('theme');
    this.#choice = kept === 'day' || kept === 'night' ? kept : 'system';
    this.apply();
  }
  get choice(): ThemeChoice {
    return this.#choice;
  }
  choose(choice: ThemeChoice): void {
    this.#choice = choice;
    this.memory.setItem('theme', choice);
    this.apply();
  }
  apply(): void {
    const system = this.dark.matches ? 'night' : 'day';
    this.root.dataset.theme = this.#choice === 'system' ? system : this.#choice;
  }
}
