// SPDX-License-Identifier: MIT
// The chosen unit is kept; what is kept but is no unit, is none. Degrees by the definition: F = 1.8 C + 32.
import { describe, expect, it } from 'vitest';
import { chartUnit } from './chart-units.ts';
import { UnitsChoice } from './units-choice.svelte.ts';

function memory(kept: Record<string, string> = {}) {
  return {
    getItem: (key: string) => kept[key] ?? null,
    setItem: (key: string, value: string) => void (kept[key] = value),
  };
}
describe('the unit of temperatures', () => {
  it('is degrees Celsius until one is chosen, and then kept', () => {
    const kept = memory();
    const first = new UnitsChoice(kept);
    expect(first.temperature).toBe('celsius');
    first.choose('fahrenheit');
    expect(new UnitsChoice(kept).temperature).toBe('fahrenheit');
  });
  it('is degrees Celsius where something else was kept', () =>
    expect(new UnitsChoice(memory({ temperature: 'kelvins' })).temperature).toBe('celsius'));
  it('has an offset for values and none for differences', () => {
    const unit = chartUnit('C', 'fahrenheit');
    expect(unit.value(100)).toBeCloseTo(212, 9);
    expect(unit.difference(100)).toBeCloseTo(180, 9);
    expect(chartUnit('V', 'fahrenheit').value(7.4)).toBe(7.4);
  });
});
