// SPDX-License-Identifier: MIT
// Whether the page is kept on this computer, and whether a newer version of it waits. A newer one is used only when
// the person says so, and never while a run or a calibration goes on.
import type { OfflineDoor } from '../adapters/offline-door.ts';

export class PageVersion {
  #stored = $state(false);
  #newer = $state(false);

  constructor(
    private readonly door: OfflineDoor | null,
    private readonly busy: () => boolean,
  ) {
    door?.onStored(() => (this.#stored = true));
    door?.onNewer(() => (this.#newer = true));
  }
  /** Opens without a network. */
  get stored(): boolean {
    return this.#stored;
  }
  /** A newer version waits, and nothing goes on that it would cut off. */
  get offered(): boolean {
    return this.#newer && !this.busy();
  }
  use(): void {
    if (this.offered) this.door?.takeOver();
  }
}
