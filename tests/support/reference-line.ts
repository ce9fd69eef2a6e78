// SPDX-License-Identifier: MIT
// The supply line of the circuit solver's netlists (bench-sim/physics/fixtures/README.md). For tests.
import type { SupplyLineParameters } from '#sim/physics/parameters';

/** Of the pack, before that line. */
export const referencePackOhm = 0.01;
export const referenceLine: SupplyLineParameters = {
  leadOhm: 0.01,
  feedOhm: 0.003,
  limiterOhm: 10,
  limiterDiodeV: 0.25,
  packLoadOhm: 0.47,
  bleederOhm: 1000,
  postOhm: 0.002,
  inductanceH: 0.4e-6,
  capacitanceF: 2e-3,
  esrOhm: 0.012,
  leakA: 0,
  shortS: 0,
  diodeV: 0,
  diodeS: 0,
  startV: 8.2,
};
