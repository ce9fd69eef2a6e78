// SPDX-License-Identifier: MIT
// A person's own limit as typed: what is wrong beside its field, units as typed, the default back when it is removed.
import { describe, expect, it } from 'vitest';
import { testRig } from '#core/samples/scan-block-fixture';
import { marmot } from './shelf.svelte.ts';
import { ownLimitText, readOwnLimit, resultLimits, withOverride, withoutOverride } from './own-limits.ts';
import { otherUnits, typedBound } from './typed-bound.ts';

const rig = testRig();
const limitsOf = (car = marmot) => resultLimits(['motor-no-load'], car, rig);
const current = (car = marmot) => limitsOf(car).find(({ key }) => key === 'motor-no-load/no-load-current')!;
const read = (min: string, max: string, reason = 'as found on my track') =>
  readOwnLimit({ min, max, reason }, { result: current(), car: marmot, rig, today: '2026-11-27' });
const told = (min: string, max: string, reason?: string) => {
  const answer = read(min, max, reason);
  return answer.ok ? {} : answer.errors;
};
describe('an own limit', () => {
  it.each([
    ['nothing', ['', ''], 'whole', /give a lower bound, an upper bound, or both/],
    ['letters', ['', 'much'], 'max', /"much" does not begin with a number\. Type a figure in A/],
    ['a foreign unit', ['', '3 V'], 'max', /"V" is no unit of this result.*A, mA, kA/],
    ['a slip of the unit', ['', '3300'], 'whole', /3300 A is more than 30 times above.*slip of the unit/],
    ['bounds swapped', ['4', '3'], 'whole', /are they swapped/],
    ['a bound below 0', ['-1', '3'], 'min', /cannot be below 0/],
    ['no reason', ['', '3', ''], 'reason', /at least 8 letters/],
  ])('of %s is refused with words at its field', (_what, [min, max, reason], field, words) =>
    expect(told(min, max, reason)[field]).toMatch(words),
  );
  it.each([
    ['3.3', 3.3],
    ['3,3 A', 3.3],
    ['3300 mA', 3.3],
  ])('of at most "%s" is taken', (text, max) =>
    expect(read('', text)).toMatchObject({ ok: true, override: { max, date: '2026-11-27' } }),
  );
  it('holds, with the default beside it; removed, the default is back', () => {
    const answer = read('', '3300 mA');
    if (!answer.ok) throw new Error('it was refused');
    const car = withOverride(marmot, answer.override);
    const own = current(car);
    expect(own).toMatchObject({
      kind: 'own override',
      holds: { range: 'at most 3.3\u00a0A' },
      usual: { kind: 'Rating of this part', range: current().holds!.range },
    });
    expect(own.holds!.displaced[0]).toMatch(/^Rating, at most /);
    expect(ownLimitText(own).max).toBe('3.3 A');
    expect(current(withoutOverride(car, own.key))).toEqual(current());
  });
  it('of a result that only informs has no default', () =>
    expect(limitsOf().some(({ holds, usual }) => holds === null && usual === null)).toBe(true));
});
describe('units as typed', () => {
  it.each([
    ['165 F', 'C', '°C', (165 - 32) / 1.8],
    ['74', 'C', '°C', 74],
    ['240 oz.in', 'N.m', 'N·m', 240 * 0.00706155181422604],
    ['12 kg.cm', 'N.m', 'N·m', 12 * 0.0980665],
    ['35', 'ohm', 'mΩ', 0.035],
    ['35 mohm', 'ohm', 'mΩ', 0.035],
    ['0.05 Ω', 'ohm', 'mΩ', 0.05],
    ['4 µs', 'us', 'µs', 4],
  ])('%s', (text, unit, shown, value) => {
    const typed = typedBound(text, unit, shown);
    expect(typed.ok ? typed.value : typed.words).toBeCloseTo(value, 9);
  });
  it('are told in the other units as well', () =>
    expect(otherUnits(1.18, 'torque')).toBe(
      '1.18\u00a0N·m, 118\u00a0N·cm, 167\u00a0oz·in, 12.0\u00a0kgf·cm',
    ));
});
