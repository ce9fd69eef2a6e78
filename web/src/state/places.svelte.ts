// SPDX-License-Identifier: MIT
// Which place of the page is open, kept in the address so that back, reload and links work. It knows names of
// places, not what is in them.

export const placeNames = ['car', 'plans', 'logbook', 'shelf', 'rig'] as const;
export type PlaceName = (typeof placeNames)[number];
export interface Location {
  readonly place: PlaceName | 'run';
  /** A part, a record or a check, when one is open inside the place. */
  readonly item: string | null;
}

export function parseAddress(hash: string): Location {
  const [place, item] = hash.replace(/^#\/?/, '').split('/');
  if (place === 'run' && item) return { place: 'run', item: decodeURIComponent(item) };
  const known = placeNames.find((name) => name === place);
  return { place: known ?? 'car', item: known && item ? decodeURIComponent(item) : null };
}

export class Places {
  #location = $state.raw<Location>({ place: 'car', item: null });

  constructor(private readonly address: { hash: string }) {
    this.follow();
  }
  get location(): Location {
    return this.#location;
  }
  /** Reads the address again; called on every hash change. */
  follow(): void {
    this.#location = parseAddress(this.address.hash);
  }
  go(place: PlaceName | 'run', item?: string): void {
    this.address.hash = item ? `#/${place}/${encodeURIComponent(item)}` : `#/${place}`;
    this.follow();
  }
}
