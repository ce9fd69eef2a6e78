// SPDX-License-Identifier: MIT
// A motor of known constants turns in a made-up run: U = R I + w/kv, loss torque a + b w (d.c. motor identities,
// k = 60/(2 pi kv)); the analysis must give its kv, current and speed at 7.4 V and 25 C back.
import { describe, expect, it } from 'vitest';
import type { Finding, Measured } from '#core/measurements/measurement';
import { noLoadV } from '#core/limits/no-load-voltage';
import { testRig } from '#core/samples/scan-block-fixture';
import type { ScanColumns } from '#core/samples/scan-columns';
import { marmot, syntheticRun, type Signals } from '../synthetic-run-fixture.ts';
import { analyse, bentShare, motorCurrent, results } from './analysis.ts';
import type { Evidence } from './evidence.ts';
import { limits } from './limits.ts';

const kv = 3000;
const ohm = 0.023;
const idleA = 0.2;
const loss = (rpm: number) => 1.7 + (1.2 * rpm) / 20000;
const steps = [0.25, 0.5, 0.75, 1].map((throttle, k) => ({
  throttle,
  stretch: { fromS: 3.2 + 2 * k, toS: 4.8 + 2 * k },
}));
const evidence: Evidence = { turned: true, failSafeS: 0.3, idle: { fromS: 1.5, toS: 2.5 }, steps };

/** Speed at which duty times bus drives the loss current. */
function spinning(busV: number, duty: number) {
  let rpm = kv * duty * busV;
  for (let k = 0; k < 50; k++) rpm = kv * (duty * busV - loss(rpm) * ohm);
  return { rpm, amps: loss(rpm) };
}
const dutyAt = (timeS: number): number =>
  timeS < 3 ? 0 : Math.min(1, 0.25 * (1 + Math.floor((timeS - 3) / 2)));
const busV = (duty: number) => 8.1 - 0.1 * duty;

function run(change: Partial<Signals> = {}, rig = testRig(), canC = 25 - 1): ScanColumns {
  const states = new Map([0.25, 0.5, 0.75, 1].map((duty) => [duty, spinning(busV(duty), duty)]));
  const current = (timeS: number) => {
    const duty = dutyAt(timeS);
    return timeS < 1 ? 0 : duty === 0 ? idleA : idleA + duty * states.get(duty)!.amps;
  };
  const tap: Signals['tap'] = (id, timeS) => {
    if (id === 'controllerVoltage') return timeS < 1 ? 0 : busV(dutyAt(timeS));
    if (id === 'packCurrentNarrow' || id === 'packCurrentWide') return current(timeS);
    return id === 'railVoltage' ? (timeS < 1 ? 0 : 6) : id === 'thermistorMotor' ? canC : 25;
  };
  const edgesPerS = (timeS: number) => (2 * (states.get(dutyAt(timeS))?.rpm ?? 0)) / 60;
  return syntheticRun(
    {
      tap,
      edgesPerS,
      feedOnS: 1,
      endS: 11,
      fast: ['controllerVoltage', 'packCurrentNarrow', 'railVoltage', 'packCurrentWide'],
      ...change,
    },
    rig,
  );
}
const find = (findings: readonly Finding[], id: string) =>
  findings.find((finding) => finding.id === id) as Measured;
const reasons = (samples: ScanColumns, kept: Partial<Evidence> = {}, car = marmot, rig = testRig()) =>
  analyse({ evidence: { ...evidence, ...kept }, samples, rig, car }).map((f) =>
    f.measured ? 'measured' : f.reason,
  );

describe('motor-no-load analysis', () => {
  const samples = run();
  const findings = analyse({ evidence, samples, rig: testRig(), car: marmot });
  const truth = spinning(7.4, 1);

  it('lists every result once', () =>
    expect(findings.map(({ id }) => id)).toEqual(results.map(({ id }) => id)));
  it('gives kv back, known to 2 % at most', () => {
    const found = find(findings, 'kv');
    expect(Math.abs(found.value / kv - 1)).toBeLessThan(0.004);
    expect((found.interval[1] - found.value) / found.value).toBeLessThan(0.02);
  });
  it('gives the no-load current at 7.4 V back, known to 3 % at most', () => {
    const found = find(findings, 'no-load-current');
    expect(Math.abs(found.value / truth.amps - 1)).toBeLessThan(0.01);
    expect((found.interval[1] - found.value) / found.value).toBeLessThan(0.03);
  });
  it('gives the speed at 7.4 V back', () =>
    expect(Math.abs(find(findings, 'no-load-speed').value / truth.rpm - 1)).toBeLessThan(0.004));
  it('takes seconds from the fit of the clock: a rig second of 1.004 s is 0.4 % less speed', () => {
    const slow = run();
    slow.clock = { ratio: 1.004, halfWidth: 3e-4, origin: 'fit' };
    const [plain, fitted] = [run(), slow].map((samples) => {
      const findings = analyse({ evidence, samples, rig: testRig(), car: marmot });
      return find(findings, 'no-load-speed').value;
    });
    expect(plain / fitted).toBeCloseTo(1.004, 4);
  });
  it('carries a warm motor back to 25 C: 0.11 % a kelvin of flux, 20 K shown being 21.74 K of the can', () => {
    const warm = find(
      analyse({ evidence, samples: run({}, testRig(), 24 + 20), rig: testRig(), car: marmot }),
      'kv',
    );
    expect(warm.value / find(findings, 'kv').value).toBeCloseTo(1 - (0.0011 * 20) / 0.92, 3);
  });
  it("tells current and speed at the label's voltage, in title and value", () => {
    const car = { ...marmot, motor: { ...marmot.motor, ratedNoLoadAtV: 7 } };
    const at7 = analyse({ evidence, samples, rig: testRig(), car });
    expect(at7.map(({ title }) => title)).toEqual(['No-load current at 7 V', 'kV', 'No-load speed at 7 V']);
    expect(Math.abs(find(at7, 'no-load-speed').value / spinning(7, 1).rpm - 1)).toBeLessThan(0.004);
    expect(find(at7, 'no-load-current').formula).toContain('speed at 7 V');
  });
  it('takes the winding as it was measured, and knows kv better by it', () => {
    const heavy = { ...marmot, motor: { ...marmot.motor, turns: 25.5 } };
    const windingOhm = { ohm: 0.0135, u: 0.0003 };
    const told = [heavy, { ...heavy, motor: { ...heavy.motor, windingOhm } }].map((car) =>
      find(analyse({ evidence, samples, rig: testRig(), car }), 'kv'),
    );
    expect(Math.abs(told[1].value / kv - 1)).toBeLessThan(Math.abs(told[0].value / kv - 1));
    expect(told[1].u).toBeLessThan(told[0].u);
    expect(told[1].budget.some(({ source }) => source === 'winding resistance by class')).toBe(false);
  });
  it('widens the current where the voltage lies beyond what was driven', () => {
    const budgetAt = (ratedNoLoadAtV: number) => {
      const car = { ...marmot, motor: { ...marmot.motor, ratedNoLoadAtV } };
      const found = find(analyse({ evidence, samples, rig: testRig(), car }), 'no-load-current');
      return (
        (found.budget.find(({ source }) => source.startsWith('current taken straight'))?.u ?? 0) / found.value
      );
    };
    expect(budgetAt(7.4)).toBeLessThan(0.001 / Math.sqrt(3));
    expect(budgetAt(9.2)).toBeGreaterThan(2 * budgetAt(7.4));
  });
  it('takes drag with the square of speed as below the line between two speeds, above it beyond', () => {
    expect(bentShare({ low: 15000, high: 20000 }, 17500)).toBeCloseTo(0.001, 9);
    expect(bentShare({ low: 15000, high: 20000 }, 20000)).toBe(0);
    expect(bentShare({ low: 15000, high: 20000 }, 22500)).toBeCloseTo(-0.003, 9);
  });
  it('tells its budget with the current tap first', () =>
    expect(find(findings, 'no-load-current').budget[0].source).toBe('gain of packCurrentNarrow'));
});
describe('motor-no-load analysis refuses', () => {
  it('a gap in the full step', () =>
    expect(reasons(run({ lost: (t) => t > 10 && t < 10.05 }))[0]).toMatch(/lost/));
  it('a clipped current', () => {
    const hot: Signals['tap'] = (id, t) =>
      id === 'packCurrentNarrow' && t > 9
        ? 12
        : id.startsWith('pack')
          ? 0
          : id === 'controllerVoltage' && t > 1
            ? 8
            : 6;
    expect(reasons(run({ tap: hot }))[0]).toMatch(/end of its range/);
  });
  it('a rig without the current tap', () => {
    const rig = testRig({}, ['packCurrentNarrow']);
    expect(reasons(run({}, rig), {}, marmot, rig)[0]).toMatch(/no tap "packCurrentNarrow"/);
  });
  it('a motor that never turned, with the sensor cable named', () =>
    expect(reasons(run(), { turned: false, opening: 0.14 })).toEqual(
      Array(3).fill(expect.stringMatching(/sensor cable/)),
    ));
  it('a motor that turned too slowly at the 30 % that are allowed', () =>
    expect(reasons(run(), { turned: false, opening: 0.3 })[0]).toMatch(
      /too slowly at 30 % throttle.*turns freely/,
    ));
  it('a motor thermistor that is missing', () => {
    const rig = testRig({}, ['thermistorMotor']);
    expect(reasons(run({}, rig), {}, marmot, rig)[0]).toMatch(/no tap "thermistorMotor"/);
  });
  it.each([null, 0.7])('a controller that drives on for %s s without pulses', (failSafeS) =>
    expect(reasons(run(), { failSafeS })[0]).toMatch(/full throttle is not safe/),
  );
  it('a run that broke off', () =>
    expect(reasons(run(), { steps: steps.slice(0, 2) })[0]).toMatch(/ended before/));
  it('pole pairs that are wrong by two', () => {
    const car = { ...marmot, motor: { ...marmot.motor, polePairs: 2 } };
    expect(reasons(run(), {}, car)).toEqual(Array(3).fill(expect.stringMatching(/pole pairs/)));
  });
  it('missed Hall edges', () => {
    const dropping = run({ edgesPerS: (t) => (t > 3 && (t % 0.5 < 0.02 ? 150 : 760)) || 0 });
    expect(reasons(dropping)[0]).toMatch(/missed or doubled/);
  });
});
describe('motorCurrent', () => {
  it('solves V Id = R I^2 + (n/kv) I', () => {
    const amps = motorCurrent(8, 1.1, 9000, 0.03, 3000);
    expect(0.03 * amps ** 2 + (9000 / 3000) * amps).toBeCloseTo(8 * 1.1, 9);
  });
  it('is the bus current itself at full duty', () =>
    expect(motorCurrent(8, 3, 3000 * (8 - 3 * 0.03), 0.03, 3000)).toBeCloseTo(3, 9));
});
describe('motor-no-load limits', () => {
  const withMotor = (change: Partial<typeof marmot.motor>, cells = 2) => ({
    ...marmot,
    motor: { ...marmot.motor, ...change },
    pack: { ...marmot.pack, cells },
  });
  const unrated = { ratedNoLoadA: undefined };
  it.each([
    ['two cells, no voltage on the label', {}, 2, 7.4],
    ['three cells, no voltage on the label', {}, 3, 11.1],
    ['one cell', {}, 1, 3.7],
    ['a label at 7.2 V', { ratedNoLoadAtV: 7.2 }, 2, 7.2],
    ['a label at 12 V on three cells', { ratedNoLoadAtV: 12 }, 3, 12],
    ['a label at 12 V that two cells do not reach', { ratedNoLoadAtV: 12 }, 2, 7.4],
  ])('are at the voltage the result is told at: %s', (_, change, cells, volts) =>
    expect(noLoadV(withMotor(change, cells))).toBe(volts),
  );
  it("take the label as it is where the result is told at the label's voltage", () =>
    expect(limits(withMotor({ ratedNoLoadAtV: 12 }, 3))['no-load-current']).toMatchObject({
      max: 3.75,
      source: expect.stringContaining('at 12 V'),
    }));
  it('do not use a label that the pack is too far from, and say so', () => {
    const limit = limits(withMotor({ ratedNoLoadAtV: 12 }))['no-load-current'];
    expect(limit.kind).toBe('common practice');
    expect(limit.refused?.[0]).toMatch(/rated at 12 V is not used at 7\.4 V/);
  });
  it('carry the class to a label at 7.0 V and have none for three cells', () => {
    const plain = limits(withMotor(unrated))['no-load-current'].max!;
    const at7 = limits(withMotor({ ...unrated, ratedNoLoadAtV: 7 }))['no-load-current'];
    expect(at7.max! / plain).toBeCloseTo((1 + 7 / 7.4) / 2, 9);
    expect(at7).toMatchObject({
      doubt: { share: expect.any(Number) },
      source: expect.stringContaining('carried to 7 V'),
    });
    expect(limits(withMotor(unrated, 3))['no-load-current']).toBeUndefined();
  });
  it('take the label where there is one: +25 %, watch from +15 %', () =>
    expect(limits(marmot)['no-load-current']).toMatchObject({
      max: 3.75,
      warnMax: expect.closeTo(3.45),
      kind: 'rating',
    }));
  it('stand in with the upper end of the class times 1.25 where there is none, and say so', () => {
    const { ratedNoLoadA: _, ...motor } = marmot.motor;
    const limit = limits({ ...marmot, motor })['no-load-current'];
    expect(limit).toMatchObject({ max: 4.5 * 1.25, kind: 'common practice' });
    expect(limit.source).toContain('no source');
  });
});
