// SPDX-License-Identifier: MIT
// Every check against an outside figure, in the order of the table.
import { distributions } from './distributions.ts';
import { gearTrain } from './gear-train.ts';
import { motorTables } from './motor-tables.ts';
import { orders } from './orders.ts';
import type { OutsideCheck } from './outside-check.ts';
import { referenceSets } from './reference-sets.ts';
import { solverRuns } from './solver-runs.ts';
import { supply } from './supply.ts';
import { temperature } from './temperature.ts';
import { uncertainty } from './uncertainty.ts';

export const allChecks: readonly OutsideCheck[] = [
  ...referenceSets,
  ...uncertainty,
  ...distributions,
  ...temperature,
  ...motorTables,
  ...orders,
  ...solverRuns,
  ...supply,
  ...gearTrain,
];
