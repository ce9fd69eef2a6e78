// SPDX-License-Identifier: MIT
// Joints of known ohms in a made-up run: each must come back within 0.1 mohm and inside its interval, a lead must be
// carried to 20 C and be held against the handbook's copper of its gauge, and what went wrong must be told.
import { describe, expect, it } from 'vitest';
import { jointLimit } from '#core/limits/joint-limits';
import { judgeAll } from '#core/verdicts/judge';
import type { Finding, Measured } from '#core/measurements/measurement';
import { carSchema, type Car, type Joint } from '#core/parts/part';
import type { Signals } from '../synthetic-run-fixture.ts';
import { marmot } from '../synthetic-run-fixture.ts';
import { byStep, probeRig, stepAt, stepRun, type Steps } from '../four-wire-fixture.ts';
import { analyse } from './analysis.ts';
import type { Evidence } from './evidence.ts';
import { limits } from './limits.ts';

const joints: Joint[] = [
  { name: 'plus plug', kind: 'bullet' },
  { name: 'cold joint', kind: 'solder' },
  { name: 'rail plug', kind: 'plug' },
  { name: 'long lead', kind: 'lead', gaugeAwg: 14, lengthM: 0.12 },
];
const car: Car = { ...marmot, leads: { kind: 'leads', name: 'leads', joints } };
/** 14 AWG has 8.28 to 8.29 mohm a metre at 20 C (handbook figure, from memory). */
const leadAt20 = 8.286e-3 * 0.12;
const airC = 27;
const raceA = 40;
const ohms = [0.2e-3, 0.07e-3, leadAt20 * (1 + 0.00393 * (airC - 20))];
const evidence: Evidence = {
  steps: [1, 2, 4].map((number, k) => ({ number, step: stepAt(k) })),
};
const run = (change: Partial<Steps> = {}, signals: Partial<Signals> = {}) =>
  stepRun({ ohm: byStep(...ohms), airC, count: 3, ...change }, signals);
const found = (samples = run(), kept = evidence, of = car) =>
  analyse({ evidence: kept, samples, rig: probeRig(), car: of });
const byId = (findings: readonly Finding[], id: string) => findings.find((f) => f.id === id) as Measured;
const reasons = (...of: Parameters<typeof found>) =>
  found(...of).map((f) => (f.measured ? 'measured' : f.reason));
const verdicts = (findings: readonly Finding[]) =>
  Object.fromEntries(judgeAll(findings, limits(car)).map(({ id, verdict }) => [id, verdict]));

describe('joint-drop says why a joint was not measured', () => {
  it('no current', () => expect(reasons(run({ amps: 0.02 }))[2]).toMatch(/Only 0\.0 A flowed.*load clips/));
  it('a jumper at the other setting', () =>
    expect(reasons(run({ besidesV: -0.04 }))[2]).toMatch(/jumper is not at x50/));
  it('a tip that slipped', () =>
    expect(reasons(run({ ohm: (s) => (s > 1.5 && s < 2.2 ? 0.4e-3 : 0.2e-3) }))[2]).toMatch(/slipped/));
  it('a range too small', () => expect(reasons(run({ ohm: () => 4e-3 }))[2]).toMatch(/end of its range/));
  it('a run that ended early: the others are told, the sums are not', () =>
    expect(reasons(run(), { steps: evidence.steps.slice(0, 2) })).toEqual([
      expect.stringMatching(/The long lead was not measured: The run ended/),
      expect.stringMatching(/The long lead was not measured/),
      'measured',
      'measured',
      expect.stringMatching(/The run ended/),
    ]));
  it('lost blocks', () =>
    expect(reasons(run({}, { lost: (s) => s > 1.3 && s < 1.4 }))[2]).toMatch(/scans were lost/));
});
describe('joint-drop', () => {
  const findings = found();
  it.each([
    ['joint-1', 0.2e-3],
    ['joint-2', 0.07e-3],
    ['joint-4', leadAt20],
  ])('gives %s back within 0.1 mΩ and inside its interval', (id, ohm) => {
    const { value, interval } = byId(findings, id);
    expect(Math.abs(value - ohm)).toBeLessThan(0.01e-3);
    expect(interval[0]).toBeLessThan(ohm);
    expect(interval[1]).toBeGreaterThan(ohm);
    expect(interval[1] - interval[0]).toBeLessThan(0.1e-3);
  });
  it('leaves out the plug of the rail, and names the others', () =>
    expect(findings.map(({ title }) => title).slice(2)).toEqual([
      'Plus plug',
      'Cold joint',
      'Long lead at 20 °C',
    ]));
  it('tells the heat of all at race current', () => {
    const { interval } = byId(findings, 'joints-heat');
    const watts = raceA ** 2 * (0.2e-3 + 0.07e-3 + leadAt20);
    expect(interval[0]).toBeLessThan(watts);
    expect(interval[1]).toBeGreaterThan(watts);
  });
  it('passes good joints, the nearest to its limit being the lead', () => {
    expect(new Set(Object.values(verdicts(findings)))).toEqual(new Set(['pass']));
    expect(byId(findings, 'worst-joint').notes[0]).toMatch(/Worst: long lead, 0\.9\d of at most 1\.09 mΩ/);
  });
  it('fails a cold joint, alone and as the worst', () => {
    const cold = found(run({ ohm: byStep(ohms[0], 0.9e-3, ohms[2]) }));
    expect(verdicts(cold)).toMatchObject({ 'joint-1': 'pass', 'joint-2': 'fail', 'worst-joint': 'fail' });
    expect(byId(cold, 'worst-joint').notes[0]).toMatch(/cold joint, 0\.90 of at most 0\.30/);
  });
  it('does not care which way round the tips are', () =>
    expect(byId(found(run({ ohm: (s) => -byStep(...ohms)(s) })), 'joint-1').value).toBeCloseTo(0.2e-3, 5));
  it('probes the plugs of the pack where nobody has entered any joint', () => {
    const bare = found(run(), { steps: evidence.steps.slice(0, 2) }, marmot);
    expect(bare.map(({ title }) => title).slice(2)).toEqual([
      'Plus plug of the pack',
      'Minus plug of the pack',
    ]);
  });
});
describe('joints as a person enters them', () => {
  const troubles = (list: unknown[]) =>
    carSchema.safeParse({ ...marmot, leads: { kind: 'leads', name: 'l', joints: list } }).error?.issues[0]
      .message;
  it.each([
    [
      'a lead without a length',
      [{ name: 'a', kind: 'lead', gaugeAwg: 12 }],
      /needs its gauge \(AWG\) and its length/,
    ],
    ['an unknown kind', [{ name: 'a', kind: 'glue' }], /one of solder, bullet, plug, lead/],
    ['two of a name', [joints[0], { ...joints[1], name: 'Plus Plug' }], /a name of its own/],
    ['none', [], /at least one joint/],
    ['a length in mm', [{ name: 'a', kind: 'lead', gaugeAwg: 12, lengthM: 120 }], /at most 2 m/],
  ])('are refused with words: %s', (_, list, words) => expect(troubles(list)).toMatch(words));
  // ohms a metre at 20 C, handbook figures from memory: 5.21, 8.29, 53, 134 mohm.
  it.each([
    [12, 5.21e-3],
    [14, 8.29e-3],
    [22, 53e-3],
    [26, 134e-3],
  ])('a lead of %d AWG may have its copper and a tenth', (gaugeAwg, ohmPerM) =>
    expect(jointLimit({ name: 'a', kind: 'lead', gaugeAwg, lengthM: 1 }).max! / (1.1 * ohmPerM)).toBeCloseTo(
      1,
      2,
    ),
  );
});
