// SPDX-License-Identifier: MIT
// For tests: the made-up truck of the project's scenario, with every part a car must have.
import type { Car } from './part.ts';

export const marmotCar: Car = {
  name: 'Marmot',
  motor: {
    kind: 'motor',
    name: 'Gravel Wren',
    turns: 13.5,
    polePairs: 1,
    sensored: true,
    ratedKvRpmPerV: 2900,
    ratedKvTolerance: 0.07,
    ratedSpeedRpm: 45000,
  },
  servo: {
    kind: 'servo',
    name: 'Lamplighter',
    digital: true,
    ratedVoltageV: 6,
    ratedStallTolerance: 0.15,
    degreesPerUs: 0.09,
  },
  controller: {
    kind: 'controller',
    name: 'Night Ferry',
    railSettingV: 6,
    railFloorV: 4,
    throttle: { lowUs: 1000, neutralUs: 1500, highUs: 2000 },
  },
  pack: { kind: 'pack', name: 'Quarry', cells: 2, chemistry: 'lipo', capacityAh: 5 },
};
