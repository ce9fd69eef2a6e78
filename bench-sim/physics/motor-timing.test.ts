// SPDX-License-Identifier: MIT
// The end bell: there and back changes nothing; more advance is faster and costs more, ever more.
import { describe, expect, it } from 'vitest';
import { ratedTimingDegrees, setTiming } from './motor-timing.ts';
import { drawParameters } from './population.ts';
import { kvRpmPerV } from './steady-state.ts';

const drawn = drawParameters(3).motor;
const at = (degrees: number) => {
  const motor = { ...drawn };
  setTiming(motor, degrees);
  return motor;
};
describe('setTiming', () => {
  it('there and back leaves every number as it was', () => {
    const motor = at(50);
    setTiming(motor, ratedTimingDegrees);
    for (const key of ['fluxVs', 'coulombNm', 'viscousNms', 'quadraticNms2', 'hallOffsetRad'] as const)
      expect(motor[key]).toBeCloseTo(drawn[key], 12);
  });
  it('from 30 to 50 degrees: 9.6 % more speed per volt, 1.6 times the drag', () => {
    expect(kvRpmPerV(at(50)) / kvRpmPerV(drawn)).toBeCloseTo(1.096, 6);
    expect(at(50).coulombNm / drawn.coulombNm).toBeCloseTo(1.6, 6);
  });
});
