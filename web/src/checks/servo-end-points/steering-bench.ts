// SPDX-License-Identifier: MIT
// What the search for the stops uses of a bench: whatever drives a servo and hears its current can stand in for a rig.
import type { SampleStore } from '#core/samples/sample-store';
import type { Bench } from '../check.ts';

type Used = 'car' | 'now' | 'wait' | 'steer' | 'steeringRange' | 'ask' | 'askNumber' | 'progress';
export interface SteeringBench extends Pick<Bench, Used> {
  readonly samples: Currents;
  waitFor(seen: () => boolean, timeoutS: number): Promise<boolean>;
}
/** Series of the rail's current. */
export type Currents = Pick<SampleStore, 'series'>;
