// SPDX-License-Identifier: MIT
// Rows of the class data for radio and receiver: their pulses, and what they do when the link is lost. None of them has a
// published source; each says what its figures are worth.

const fromMemory = 'from memory, no source';

export const radioRows = [
  {
    result: 'radio-range/wheel-channel',
    partClass: 'any radio',
    unit: 'channel',
    min: 1,
    max: 1,
    condition: 'steering on channel 1, throttle on channel 2',
    mark: 'common practice, no source',
  },
  {
    result: 'radio-range/throttle-travel',
    partClass: 'any radio',
    typical: [350, 500],
    unit: 'us',
    min: 200,
    condition: 'full throttle is the longer pulse',
    mark: fromMemory,
  },
  {
    result: 'radio-range/brake-travel',
    partClass: 'any radio',
    typical: [350, 500],
    unit: 'us',
    min: 100,
    condition: 'full brake is the shorter pulse',
    mark: fromMemory,
  },
  {
    result: 'radio-range/radio-jitter',
    partClass: 'any radio',
    typical: [0.5, 2],
    unit: 'us',
    max: 5,
    condition: 'more than that and a servo with a fine dead band hunts',
    mark: fromMemory,
  },
  {
    result: 'failsafe/fail-safe-time',
    partClass: 'any receiver',
    unit: 's',
    max: 1,
    condition: 'neutral or brake within a second',
    mark: 'common practice, no source',
  },
  {
    result: 'failsafe/throttle-after-loss',
    partClass: 'any receiver',
    unit: '%',
    max: 5,
    condition: 'no throttle; brake is allowed',
    mark: 'common practice, no source',
  },
  {
    result: 'failsafe/throttle-on-return',
    partClass: 'any receiver',
    unit: '%',
    max: 5,
    condition: 'the link comes back without opening the throttle',
    mark: 'common practice, no source',
  },
];
