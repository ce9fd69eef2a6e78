// SPDX-License-Identifier: MIT
// A rotor of known inertia and drag, J dw/dt = -(a + b w + c w^2), driven by the power that its drag takes and then left
// alone; the analysis must give inertia, drag, share and time back, and refuse where something brakes it.
import { describe, expect, it } from 'vitest';
import { coastingSpeed } from '#core/measurements/coast-down';
import type { Measured } from '#core/measurements/measurement';
import { testRig } from '#core/samples/scan-block-fixture';
import { judge } from '#core/verdicts/judge';
import { marmot, syntheticRun, type Signals } from '../synthetic-run-fixture.ts';
import { analyse, results } from './analysis.ts';
import type { Evidence } from './evidence.ts';
import { limits } from './limits.ts';

const ohm = 0.023;
const busV = 7.9;
const idleA = 0.2;
const fullRadS = 2300;
const rotor = { inertiaKgM2: 4e-6, dryNm: 5.5e-3, dragNms: 1.6e-6, squareNms2: 8e-11 };
type Rotor = typeof rotor;
const lossNm = ({ dryNm, dragNms, squareNms2 }: Rotor, w: number) => dryNm + dragNms * w + squareNms2 * w * w;
/** Motor current whose power less copper loss is what the drag takes. */
const driveA = (of: Rotor): number => {
  const power = lossNm(of, fullRadS) * fullRadS;
  return (busV - Math.sqrt(busV ** 2 - 4 * ohm * power)) / (2 * ohm);
};
const spins = [
  { full: { fromS: 3.1, toS: 4 }, coast: { fromS: 4, toS: 6.4 } },
  { full: { fromS: 7.1, toS: 8 }, coast: { fromS: 8, toS: 10.4 } },
];
const evidence: Evidence = { turned: true, failSafeS: 0.3, idle: { fromS: 1.5, toS: 2.5 }, spins };

interface Wanted {
  readonly of?: Rotor;
  /** What slows the rotor while it coasts, of its own drag. */
  readonly times?: number;
  readonly backA?: number;
  readonly signals?: Partial<Signals>;
}
function run({ of = rotor, times = 1, backA = 0, signals = {} }: Wanted = {}) {
  const fall = [of.dryNm, of.dragNms, of.squareNms2].map((part) => (times * part) / of.inertiaKgM2);
  const falling = coastingSpeed([fullRadS, ...fall]);
  const coasting = (t: number) => spins.find(({ coast }) => t >= coast.fromS && t < coast.toS)?.coast.fromS;
  const speed = (t: number) => {
    const since = coasting(t);
    if (since !== undefined) return Math.max(0, falling(t - since));
    return (t > 3 && t < 4) || (t > 7 && t < 8) ? fullRadS : 0;
  };
  const amps = (t: number) => {
    if (t < 1) return 0;
    if (coasting(t) !== undefined) return idleA - (speed(t) > 500 ? backA : 0);
    return speed(t) > 0 ? idleA + driveA(of) : idleA;
  };
  const tap: Signals['tap'] = (id, t) => {
    if (id === 'packCurrentNarrow' || id === 'packCurrentWide') return amps(t);
    if (id === 'controllerVoltage') return t < 1 ? 0 : busV;
    return id === 'railVoltage' ? (t < 1 ? 0 : 6) : 25;
  };
  const fast = ['controllerVoltage', 'packCurrentNarrow', 'railVoltage', 'packCurrentWide'] as const;
  return syntheticRun({
    tap,
    edgesPerS: (t) => speed(t) / Math.PI,
    feedOnS: 1,
    endS: 10.6,
    fast,
    ...signals,
  });
}
const analysed = (wanted: Wanted = {}, kept: Partial<Evidence> = {}) =>
  analyse({ evidence: { ...evidence, ...kept }, samples: run(wanted), rig: testRig(), car: marmot });
const reason = (wanted: Wanted, kept: Partial<Evidence> = {}) => {
  const [first] = analysed(wanted, kept);
  return first.measured ? 'measured' : first.reason;
};

describe('motor-coastdown refuses', () => {
  it('a motor that never turned', () => expect(reason({}, { turned: false })).toMatch(/sensor cable/));
  it('a run without a run-down', () =>
    expect(reason({}, { spins: [] })).toMatch(/before the first run-down/));
  it('current fed back while it slows, with the drag brake named', () =>
    expect(reason({ backA: 0.3 })).toMatch(/fed 0\.30 A back.*drag brake to zero/));
  it('a brake that gives nothing back: a rotor that seems lighter than any', () =>
    expect(reason({ times: 2.5 })).toMatch(/sooner than a rotor of this size/));
  it('missed edges', () => {
    const dropping = (t: number) => (t > 4.3 && t < 4.33 ? 60 : Math.max(0, 700 - 300 * Math.max(0, t - 4)));
    expect(reason({ signals: { edgesPerS: dropping } }, { spins: spins.slice(0, 1) })).toMatch(
      /missed or doubled/,
    );
  });
});
describe('motor-coastdown', () => {
  const findings = analysed();
  const valueOf = (id: string) => (findings.find((finding) => finding.id === id) as Measured).value;
  it('lists every result once', () =>
    expect(findings.map(({ id }) => id)).toEqual(results.map(({ id }) => id)));
  it('gives the inertia back: 40 g cm2', () => expect(valueOf('rotor-inertia') / 40).toBeCloseTo(1, 2));
  it('gives the dry share back', () => {
    const share = (100 * rotor.dryNm) / lossNm(rotor, 2200);
    expect(Math.abs(valueOf('coast-dry-share') - share)).toBeLessThan(2);
  });
  it('gives the drag torque back', () => {
    const noLoad = (fullRadS * (7.4 - 3 * ohm)) / (busV - 3 * ohm);
    expect(valueOf('coast-drag-torque') / (1e3 * lossNm(rotor, noLoad))).toBeCloseTo(1, 2);
  });
  it('gives the seconds from 10,000 to 5,000 rpm back', () => {
    const fall = [rotor.dryNm, rotor.dragNms, rotor.squareNms2].map((part) => part / rotor.inertiaKgM2);
    const speed = coastingSpeed([(10_000 * Math.PI) / 30, ...fall]);
    expect(speed(valueOf('coast-time'))).toBeCloseTo((5000 * Math.PI) / 30, -0.5);
  });
  it('fails the label by the drag of worn bearings, and measures them although the run-down is short', () => {
    const worn = { ...rotor, dryNm: 12e-3, dragNms: 3.5e-6, squareNms2: 1.8e-10 };
    const [torque, ...others] = analysed({ of: worn });
    expect(judge(torque, limits(marmot)['coast-drag-torque']).verdict).toBe('fail');
    expect(others.every(({ measured }) => measured)).toBe(true);
  });
});
describe('motor-coastdown limits', () => {
  it('are the label: 3 A times 60/(2 pi 3000) and a quarter', () =>
    expect(limits(marmot)['coast-drag-torque']).toMatchObject({
      max: expect.closeTo(3 * (60 / (2 * Math.PI * 3000)) * 1250, 6),
      kind: 'rating',
    }));
});
