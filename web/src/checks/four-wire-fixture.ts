// SPDX-License-Identifier: MIT
// For tests: a rig with the joint probe in both settings of its jumper, and a made-up run of load steps in which the
// probe sees a given resistance in each.
import type { LoadStep } from '#core/measurements/load-step';
import type { RigDescription, Tap } from '#core/samples/rig-description';
import { testRig } from '#core/samples/scan-block-fixture';
import { syntheticRun, type Signals } from './synthetic-run-fixture.ts';

const probe = (
  id: string,
  jumper: string,
  scale: [number, number],
  range: [number, number],
  offset: number,
): Tap => ({
  id,
  channel: 6,
  jumper,
  quantity: 'voltage',
  unit: 'V',
  scale: { kind: 'linear', zeroV: scale[0], unitsPerV: scale[1] },
  low: range[0],
  high: range[1],
  cornerHz: 3400,
  error: { gain: 0.01, offset, drift: offset / 5, inlLsb: 1, noiseLsb: 0.6 },
});
export function probeRig(): RigDescription {
  const { descriptor, store } = testRig();
  const probes = [
    probe('jointProbe', 'x50', [2.5, 0.02], [-0.05, 0.05], 0.0005),
    probe('jointProbeWide', 'x5', [0.3, 0.2], [-0.04, 0.89], 0.005),
  ];
  return { store, descriptor: { ...descriptor, taps: [...descriptor.taps, ...probes] } };
}
export const loadA = 16;
/** One step every 2.5 s: half a second off, on, off. */
export const stepAt = (k: number, tap: 'jointProbe' | 'jointProbeWide' = 'jointProbe'): LoadStep => ({
  tap,
  off: { fromS: 0.5 + 2.5 * k, toS: 0.85 + 2.5 * k },
  on: { fromS: 1.1 + 2.5 * k, toS: 1.85 + 2.5 * k },
  after: { fromS: 2.3 + 2.5 * k, toS: 2.65 + 2.5 * k },
});
const isOn = (timeS: number): boolean => (timeS + 10 - 1) % 2.5 < 1;

export interface Steps {
  readonly tap?: 'jointProbe' | 'jointProbeWide';
  /** Resistance between the tips at a time. */
  readonly ohm: (timeS: number) => number;
  readonly airC?: number;
  readonly canC?: number;
  readonly amps?: number;
  /** What the tap shows besides, V. */
  readonly besidesV?: number;
  readonly count: number;
}
export function stepRun(steps: Steps, change: Partial<Signals> = {}) {
  const { tap: probeTap = 'jointProbe', ohm, airC = 20, canC = airC, amps = loadA, besidesV = 20e-6 } = steps;
  const current = (timeS: number) => (isOn(timeS) ? amps : 0.01);
  const tap: Signals['tap'] = (id, timeS) => {
    if (id === probeTap) return ohm(timeS) * current(timeS) + besidesV;
    if (id === 'packCurrentWide' || id === 'packCurrentNarrow') return current(timeS);
    if (id === 'thermistorMotor') return canC;
    return id === 'thermistorAmbient' ? airC : id === 'packVoltage' ? 8 : 0;
  };
  return syntheticRun(
    {
      tap,
      feedOnS: Number.POSITIVE_INFINITY,
      endS: 0.6 + 2.5 * steps.count,
      fast: [probeTap, 'packCurrentWide', 'packVoltage', 'packCurrentNarrow'],
      ...change,
    },
    probeRig(),
  );
}
/** Resistance by step. */
export const byStep =
  (...ohms: number[]) =>
  (timeS: number): number =>
    ohms[Math.min(ohms.length - 1, Math.max(0, Math.floor((timeS - 0.2) / 2.5)))];
