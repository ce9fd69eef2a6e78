// SPDX-License-Identifier: MIT
// Rows of the class data for a servo in the car: its linkage, its end points, the tyres' scrub, its heat. None of them
// has a published source; each says what its figures are worth.

const fromMemory = 'from memory, no source';
const hold = (side: 'left' | 'right') => ({
  result: `servo-end-points/hold-${side}`,
  partClass: 'any servo in a car',
  typical: [0.005, 0.3],
  unit: 'A',
  max: 0.5,
  watchMax: 0.3,
  condition: 'holding at full lock without a load',
  mark: fromMemory,
});
const heat = (result: string, when: string) => ({
  result: `servo-heat/${result}`,
  partClass: 'any servo',
  typical: [40, 55],
  unit: 'C',
  max: 70,
  watchMax: 60,
  condition: `servo case ${when}`,
  mark: fromMemory,
});
export const linkageRows = [
  {
    result: 'servo-end-points/travel-asymmetry',
    partClass: 'any steering',
    typical: [0.1, 12],
    unit: '%',
    max: 20,
    condition: 'left and right alike but for build and the tooth of the spline',
    mark: fromMemory,
  },
  {
    result: 'servo-scrub/scrub-share',
    partClass: 'any servo in a car',
    typical: [10, 30],
    unit: '%',
    max: 40,
    condition: 'a servo that needs more than that of its stall current to turn standing tyres is overloaded',
    mark: fromMemory,
  },
  {
    result: 'servo-scrub/scrub-hold',
    partClass: 'any servo in a car',
    typical: [0.005, 0.3],
    unit: 'A',
    max: 0.5,
    watchMax: 0.3,
    condition: 'holding at lock against twisted tyres',
    mark: fromMemory,
  },
  {
    result: 'servo-scrub/scrub-dip',
    partClass: 'any controller',
    unit: 'V',
    of: 'receiver floor',
    min: 1,
    watchBelowSetting: 0.85,
    condition: "the receiver's minimum plus 0.5 V; watched from 85 % of the setting",
    mark: 'common practice, no source',
  },
  heat('case-temperature', 'after hard work'),
  heat('flag-temperature', 'after a race of hard work'),
  hold('left'),
  hold('right'),
];
