// SPDX-License-Identifier: MIT
// The virtual rig's faults in the groups of the panel, as cards for its switches; and those that may be hidden.
import { faultGroups as groups, faultTable, type FaultEntry } from '#sim/faults/faults';

export type FaultCard = Pick<FaultEntry, 'name' | 'title' | 'words' | 'severity' | 'check'>;
interface FaultGroup {
  readonly title: string;
  readonly faults: readonly FaultCard[];
}
export const faultGroups: readonly FaultGroup[] = groups.filter(({ faults }) => faults.length > 0);

/** Faults of the car that a check must find: not those of the rig itself, nor what is no fault. */
const hideable = ({ room, verdict }: FaultEntry) =>
  (room === 'plant' || room === 'wiring') && verdict !== 'pass';
export const hideableFaults: readonly FaultCard[] = faultTable.filter(hideable);
export const hideableGroups: readonly FaultGroup[] = groups
  .map(({ title, faults }) => ({ title, faults: faults.filter(hideable) }))
  .filter(({ faults }) => faults.length > 0);
