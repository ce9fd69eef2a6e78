// SPDX-License-Identifier: MIT
// The virtual rig's faults in the groups of the panel, as cards for its switches.
import { faultGroups as groups, type FaultEntry } from '#sim/faults/faults';

export type FaultCard = Pick<FaultEntry, 'name' | 'title' | 'words' | 'severity'>;
export const faultGroups = groups
  .filter(({ faults }) => faults.length > 0)
  .map(({ title, faults }) => ({ title, faults: faults as readonly FaultCard[] }));
