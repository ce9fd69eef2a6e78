// SPDX-License-Identifier: MIT
// The table of faults is whole, and what a person types is read or refused with words.
import { describe, expect, it } from 'vitest';
import { faultTable, parseFault } from './faults.ts';

describe('faults', () => {
  it('have names of their own, in lower case with hyphens', () => {
    const names = faultTable.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const name of names) expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
  });

  it('reads name=severity, 1 without a figure', () => {
    expect(parseFault('soft-rail=0.5')).toEqual({ name: 'soft-rail', severity: 0.5 });
    expect(parseFault('soft-rail')).toEqual({ name: 'soft-rail', severity: 1 });
    expect(parseFault('block-loose=0')).toEqual({ name: 'block-loose', severity: 0 });
  });

  it.each(['gremlins=1', '', '=1', 'SOFT-RAIL'])(
    'refuses the name in "%s" and lists the known ones',
    (text) => {
      expect(() => parseFault(text)).toThrow(/There is no fault .*worn-bearings/);
    },
  );

  it.each([
    'soft-rail=2',
    'soft-rail=-0.1',
    'soft-rail=',
    'soft-rail=much',
    'soft-rail=0.1=2',
    'soft-rail=NaN',
  ])('refuses the severity in "%s"', (text) => {
    expect(() => parseFault(text)).toThrow(/from 0 to 1/);
  });
});
