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
  hold('left'),
  hold('right'),
];
