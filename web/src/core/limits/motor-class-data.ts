// SPDX-License-Identifier: MIT
// Rows of the class data for sensor cable, coasting, heat, timing and mesh. None of them has a published source; each
// says what its figures are worth.

const fromMemory = 'from memory, no source';
const commonPractice = 'common practice, no source';
const sensored = 'any sensored motor';

const longerHalf = (line: string) => ({
  result: `sensor-cable/hall-${line}-longer-half`,
  partClass: sensored,
  typical: [50, 55],
  unit: '%',
  max: 60,
  watchMax: 55,
  condition: 'each half of a turn 45 to 55 % is good, outside 40 to 60 % fails',
  mark: fromMemory,
});
/** There is nothing between none and one; the limit stands in the middle. */
const none = (result: string, unit: string, condition: string) => ({
  result: `sensor-cable/${result}`,
  partClass: sensored,
  unit,
  max: 0.5,
  condition,
  mark: commonPractice,
});
export const motorRows = [
  {
    result: 'sensor-cable/hall-liveness',
    partClass: sensored,
    unit: '%',
    min: 70,
    condition: 'all three lines give the same number of edges',
    mark: commonPractice,
  },
  {
    result: 'sensor-cable/hall-order',
    partClass: sensored,
    unit: '%',
    min: 90,
    condition: 'one order in the running direction; the rest is the hand that falters',
    mark: commonPractice,
  },
  {
    result: 'sensor-cable/hall-invalid-states',
    partClass: sensored,
    unit: '%',
    max: 2,
    condition: 'three lines 120 degrees apart are never all alike',
    mark: commonPractice,
  },
  none('hall-extra-edges', 'pulses', 'not one pulse beside those of the turning'),
  ...['a', 'b', 'c'].map(longerHalf),
  none('hall-drop-outs', 'drop-outs', 'not one drop-out while the cable is moved'),
  none('sensor-thermistor-lost', 'readings', 'not one reading open or shorted'),
  {
    result: 'sensor-cable/sensor-thermistor-offset',
    partClass: sensored,
    unit: 'K',
    max: 3,
    condition: 'a cold motor reads within 3 K of the room',
    mark: fromMemory,
  },
  ...['spur', 'pinion'].map((gear) => ({
    result: `gear-mesh/${gear}-variation`,
    partClass: 'any drive train, wheels off',
    unit: '%',
    max: 30,
    watchMax: 20,
    condition: `a ${gear} always runs a little out of true; beyond this the mesh is tight at one place`,
    mark: fromMemory,
  })),
  {
    result: 'timing-sweep/timing-drift',
    partClass: 'any motor with an end bell that turns',
    unit: '%',
    max: 8,
    watchMax: 4,
    condition:
      'beyond this the marks can not be compared: let the motor cool, or look for a screw that slipped',
    mark: fromMemory,
  },
];
