// SPDX-License-Identifier: MIT
// The project's computation against published figures; each row names its source (README.md shows them all). Below:
// what an outside figure must expose, and where the fit has to say that it can't.
import { describe, expect, it } from 'vitest';
import { allChecks } from './all-checks.ts';
import { fixture } from './fixture-file.ts';
import { rowOf, motorOf } from './motor-tables.ts';
import { curves, fitted, tooFar } from './reference-sets.ts';
import { byBeta } from './temperature.ts';
import { halfWidth } from '#core/measurements/coverage-interval';
import { budgetOf, uncertain } from '#core/measurements/quantity';
import { thermistorLines } from '#core/measurements/thermistor-errors';
import { descriptorSchema } from '#core/samples/rig-description';
import { readFileSync } from 'node:fs';
import { noLoadState } from '#sim/physics/steady-state';

describe.each(allChecks.map((check) => [check.source, check] as const))('%s', (_source, { cases, code }) => {
  it.each(cases.map((one) => [one.name, one] as const))(`${code}: %s`, (_name, { expected, got, within }) => {
    const found = got();
    expect(found).not.toBeNull();
    expect(Math.abs(found! - expected)).toBeLessThanOrEqual(within);
  });
});
describe('what the fit can not do, and says so', () => {
  it.each(tooFar)('%s, far from the minimum', (words) => {
    const set = fixture('strd-nonlinear').sets.find(({ name }) => words.startsWith(name))!;
    expect(fitted(set, curves[set.name], set.start1)).toBeNull();
  });
  const linear = (wanted: string) => fixture('strd-linear').sets.find(({ name }) => name === wanted)!;
  const polynomial = (b: readonly number[]) => (x: number) => b.reduceRight((sum, c) => sum * x + c, 0);
  it('Filip, tenth power: its columns are alike to a double', () => {
    const set = linear('Filip');
    expect(
      fitted(
        set,
        polynomial,
        set.certified.map(() => 0),
      ),
    ).toBeNull();
  });
  it('Wampler1, exact data: parameters of 1 to nine digits, no scatter', () => {
    const set = linear('Wampler1');
    const fit = fitted(
      set,
      polynomial,
      set.certified.map(() => 0),
    )!;
    for (const value of fit.parameters) expect(Math.abs(value - 1)).toBeLessThan(1e-9);
    expect(Math.sqrt(fit.chi2 / fit.dof)).toBeLessThan(1e-6);
  });
});
describe('what an outside figure exposes', () => {
  it('row M3: its no-load speed does not follow from its own constants', () => {
    const row = rowOf('M3');
    const { speedRpm } = noLoadState(motorOf(row), row.ohm, row.voltageV);
    expect(speedRpm).toBeCloseTo(4047, -1);
    expect(speedRpm / row.noLoadRpm).toBeGreaterThan(1.3);
  });
  it("a B equation is 2 K off a maker's table at 100 C, and B of 25 to 85 C moves the error, not removes it", () => {
    const [table] = fixture('thermistor-tables').tables;
    const error = (t: number, betaK: number) => byBeta(table, table.ohm[table.celsius.indexOf(t)], betaK) - t;
    expect(error(100, table.beta25to50K)).toBeGreaterThan(2);
    expect(Math.abs(error(85, table.beta25to85K))).toBeLessThan(0.01);
    expect(Math.abs(error(50, table.beta25to85K))).toBeGreaterThan(0.3);
  });
});
describe("the budget of a thermistor tap against makers' tables", () => {
  const file = new URL('../../firmware-protocol/firmware/descriptor.json', import.meta.url);
  const descriptor = descriptorSchema.parse(JSON.parse(readFileSync(file, 'utf8')));
  const tap = descriptor.taps.find(({ id }) => id === 'thermistorMotor')!;
  const linesAt = (celsius: number) => thermistorLines({ descriptor, store: null }, tap, celsius);
  const warm = (celsius: number) => celsius >= 0 && celsius <= 100;
  it.each(fixture('thermistor-tables').tables.map((table) => [table.name, table] as const))(
    '%s: what the B equation is wrong by from 0 to 100 C lies within the line of the bend',
    (_name, table) => {
      for (const [k, celsius] of table.celsius.entries()) {
        if (!warm(celsius)) continue;
        const error = Math.abs(byBeta(table, table.ohm[k], table.beta25to50K) - celsius);
        const bend = linesAt(celsius).find(([{ id }]) => id.startsWith('bend'))![1] * Math.sqrt(3);
        // Tables are rough by themselves: by so much they leave a smooth curve, too.
        const rough = Math.max(0.03, table.steinhartHartWorstK);
        expect(error, `${celsius} C`).toBeLessThanOrEqual(Math.abs(bend) + rough);
      }
    },
  );
  it.each([
    [25, 0.3, 0.6],
    [65, 0.6, 1.2],
    [100, 1.5, 3],
  ])('at %d C U is %d to %d K', (celsius, least, most) => {
    const u = halfWidth(budgetOf(uncertain(celsius, linesAt(celsius))));
    expect(u).toBeGreaterThan(least);
    expect(u).toBeLessThan(most);
  });
});
