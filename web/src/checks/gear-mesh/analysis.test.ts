// SPDX-License-Identifier: MIT
// What a mesh run refuses, how marks tell orders apart, and the shape of a known curve. The whole chain on a known train
// is held in tests/sim.
import { describe, expect, it } from 'vitest';
import { testRig } from '#core/samples/scan-block-fixture';
import { ScanColumns } from '#core/samples/scan-columns';
import type { Bench } from '../check.ts';
import { marmot } from '../synthetic-run-fixture.ts';
import { analyse } from './analysis.ts';
import { dragAt, polarOf, tellableOrders, type MeshWaves } from './drag-curve.ts';
import type { Evidence } from './evidence.ts';
import { angleAt } from './mesh-angle.ts';
import { procedure } from './procedure.ts';
import { tightDegrees } from './tight-tooth.ts';

const drive = {
  kind: 'drive',
  name: 'Marmot drive train',
  pinionTeeth: 20,
  spurTeeth: 72,
  internalRatio: 2.6,
  tyreDiameterM: 0.086,
} as const;
const idle = { fromS: 1, toS: 2 };
const proven = { turned: true, opening: 0.12, failSafeS: 0.3, dotS: 0.5, idle };
const reason = (evidence: Evidence, car = { ...marmot, drive }) => {
  const rig = testRig();
  const [first] = analyse({ evidence, samples: new ScanColumns(rig), rig, car });
  return first.measured ? 'measured' : first.reason;
};

describe('gear-mesh refuses', () => {
  it('a car without teeth, before anything is switched on', async () => {
    const evidence = await procedure({ car: marmot } as Bench);
    expect(evidence).toEqual({ teethKnown: false, run: null });
    expect(reason(evidence)).toMatch(/Enter them on the drive train/);
  });
  it('a motor that never turned', () =>
    expect(reason({ teethKnown: true, run: { ...proven, turned: false, turning: null } })).toMatch(
      /sensor cable/,
    ));
  it('a run that broke off', () =>
    expect(reason({ teethKnown: true, run: { ...proven, turning: null } })).toMatch(
      /before the slow turning/,
    ));
});
describe('orders of the spur', () => {
  it('are four where the marks can tell them apart', () =>
    expect(tellableOrders(20 / 73, 4)).toEqual([1, 2, 3, 4]));
  it('leave out one that lies on a whole order of the rotor: 24 teeth on 72, three turns', () =>
    expect(tellableOrders(24 / 72, 4)).toEqual([1, 2, 4]));
  it('leave out one that two marks a turn show as another: 20 teeth on 70', () =>
    expect(tellableOrders(20 / 70, 2)).toEqual([1, 2, 3]));
});
describe('the drag curve', () => {
  const spur = [
    { order: 1, cos: 0.2 * Math.cos(1), sin: 0.2 * Math.sin(1), u: 0 },
    { order: 2, cos: 0.1 * Math.cos(2), sin: 0.1 * Math.sin(2), u: 0 },
  ];
  it('has its top where both orders have theirs: at one radian, 57 degrees', () => {
    expect(tightDegrees({ spur } as unknown as MeshWaves)).toBe(57);
    expect(dragAt(spur, 1)).toBeCloseTo(1.3, 9);
  });
  it('is told for every degree of the spur, about a mean of one', () => {
    const polar = polarOf({ spur } as unknown as MeshWaves);
    expect(polar.map(({ degrees }) => degrees)).toEqual(Array.from({ length: 360 }, (_, k) => k));
    expect(polar.reduce((sum, { drag }) => sum + drag, 0) / 360).toBeCloseTo(1, 9);
  });
});
describe('the angle of the shaft', () => {
  const marked = { timesS: Float64Array.of(1, 2, 4), startRad: 10, stepRad: Math.PI };
  it('goes straight from mark to mark', () => {
    expect(angleAt(marked, 1.5)).toBeCloseTo(10 + Math.PI / 2, 12);
    expect(angleAt(marked, 3)).toBeCloseTo(10 + 1.5 * Math.PI, 12);
  });
  it('is not told outside them', () => expect(angleAt(marked, 4.1)).toBeNaN());
});
