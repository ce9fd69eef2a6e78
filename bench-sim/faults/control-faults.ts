// SPDX-License-Identifier: MIT
// Faults of radio, receiver and the controller's idea of the throttle. Data only; how each is made stands elsewhere.
import type { FaultRow } from './fault-row.ts';

export const controlFaults = [] as const satisfies readonly FaultRow[];
