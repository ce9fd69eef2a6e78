// SPDX-License-Identifier: MIT
// Rows of the class data for a servo out of the car: at rest, moving without a load. None of them has a published
// source; each says what its figures are worth.

const fromMemory = 'from memory, no source';
const partClass = 'any servo';

export const servoRows = [
  {
    result: 'servo-idle/centre-current',
    partClass,
    typical: [0.005, 0.05],
    unit: 'A',
    max: 0.1,
    watchMax: 0.05,
    condition: 'at rest, horn free',
    mark: fromMemory,
  },
  {
    result: 'servo-idle/hunting-current',
    partClass,
    unit: 'A',
    max: 0.05,
    condition: 'a servo that rests draws a steady current',
    mark: fromMemory,
  },
  {
    result: 'servo-idle/dead-band',
    partClass,
    typical: [1, 8],
    unit: 'us',
    max: 8,
    condition: '1 to 4 µs is usual for digital servos, 4 to 8 µs for simple ones',
    mark: fromMemory,
  },
  {
    result: 'servo-no-load/moving-current',
    partClass,
    typical: [0.2, 0.6],
    unit: 'A',
    max: 0.75,
    condition: 'upper end of the usual (0.6 A) times 1.25, until it has a baseline',
    mark: fromMemory,
  },
  {
    result: 'servo-no-load/direction-asymmetry',
    partClass,
    unit: '%',
    max: 20,
    condition: 'both directions alike',
    mark: fromMemory,
  },
  {
    result: 'servo-no-load/tight-spot',
    partClass,
    unit: 'times',
    max: 2.5,
    condition: 'against the middle of the travel; friction shows in the square of the current',
    mark: fromMemory,
  },
];
