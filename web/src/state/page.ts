// SPDX-License-Identifier: MIT
// Everything a screen may read or ask for, handed down once by the page's entry. It holds no state of its own.
import { getContext } from 'svelte';
import type { Bench } from './bench.svelte.ts';
import type { Calibration } from './calibration.svelte.ts';
import type { Cues } from './cues.svelte.ts';
import type { HiddenFaults } from './hidden-faults.svelte.ts';
import type { KeptMemory } from './kept-memory.svelte.ts';
import type { Logbook } from './logbook.svelte.ts';
import type { Plans } from './plans.svelte.ts';
import type { PageVersion } from './page-version.svelte.ts';
import type { Places } from './places.svelte.ts';
import type { Reader } from './reader.svelte.ts';
import type { Repairs } from './repairs.svelte.ts';
import type { RigWays } from './rig-ways.svelte.ts';
import type { Run } from './run.svelte.ts';
import type { Shelf } from './shelf.svelte.ts';
import type { Theme } from './theme.svelte.ts';
import type { UnitsChoice } from './units-choice.svelte.ts';

export interface Page {
  readonly bench: Bench;
  readonly ways: RigWays;
  readonly run: Run;
  readonly plans: Plans;
  readonly calibration: Calibration;
  /** Where cars, parts, repairs and plans are kept. */
  readonly memory: Pick<KeptMemory, 'trouble' | 'waiting' | 'retry'>;
  readonly logbook: Logbook;
  readonly reader: Reader;
  readonly shelf: Shelf;
  readonly repairs: Repairs;
  readonly places: Places;
  readonly theme: Theme;
  readonly units: UnitsChoice;
  readonly version: PageVersion;
  readonly cues: Cues;
  readonly hidden: HiddenFaults;
}
const key = Symbol('page');
/** What the entry hands to `mount` as context. */
export const pageContext = (page: Page) => new Map([[key, page]]);
export const usePage = (): Page => getContext(key);
