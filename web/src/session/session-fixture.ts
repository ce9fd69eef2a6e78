// SPDX-License-Identifier: MIT
// For tests: a scripted rig, a manual clock and a session on them; a car; a check that only drives and waits.
import { z } from 'zod';
import type { Bench, Check } from '#checks/check';
import type { Car } from '#core/parts/part';
import { ManualClock } from './manual-clock-fixture.ts';
import { RigSession } from './rig-session.ts';
import { ScriptedRig } from './scripted-rig-fixture.ts';

export function scene(mayBeat: () => boolean = () => true) {
  const clock = new ManualClock();
  const rig = new ScriptedRig(clock);
  const session = new RigSession(rig, clock, { mayBeat, randomWord: () => 0xc0ffee });
  return { clock, rig, session };
}
export async function connected(mayBeat?: () => boolean) {
  const all = scene(mayBeat);
  await all.clock.settle(all.session.connect());
  return all;
}
export const car: Car = {
  name: 'Marmot',
  motor: {
    kind: 'motor',
    name: 'Marmot 13T',
    turns: 13,
    polePairs: 1,
    sensored: true,
    ratedKvRpmPerV: 3000,
    ratedKvTolerance: 0.07,
    ratedSpeedRpm: 50000,
  },
  servo: {
    kind: 'servo',
    name: 'Marmot steering',
    digital: true,
    ratedVoltageV: 6,
    ratedStallTolerance: 0.2,
    degreesPerUs: 0.09,
  },
  controller: {
    kind: 'controller',
    name: 'Lantern 90',
    railSettingV: 6,
    railFloorV: 4,
    throttle: { lowUs: 1000, neutralUs: 1500, highUs: 2000 },
  },
  pack: { kind: 'pack', name: 'Quarry 2S', cells: 2, chemistry: 'lipo', capacityAh: 5 },
};
export const plan = {
  fast: ['packVoltage', 'packCurrentNarrow', 'railVoltage', 'packCurrentWide'],
  slow: 'multiplexer',
} as const;

export const label = { id: 'run 1', startedAt: '2026-01-01T00:00:00.000Z', tool: 'test' };
/** Its one result is the mean rail voltage over the last second. */
export function toyCheck(procedure: (bench: Bench) => Promise<unknown>, more: Partial<Check> = {}): Check {
  return {
    id: 'toy',
    title: 'Toy',
    part: 'controller',
    why: 'for tests',
    needs: { taps: ['railVoltage', 'thermistorMotor'], outputs: ['throttle'] },
    wiring: [],
    cautions: [],
    durationS: 10,
    results: [{ id: 'rail', title: 'Rail', unit: 'V' }],
    evidenceSchema: z.unknown(),
    procedure,
    analyse: ({ samples }) => [
      {
        measured: true,
        id: 'rail',
        title: 'Rail',
        unit: 'V',
        value: samples.latest('railVoltage')?.value ?? Number.NaN,
        u: 0.01,
        interval: [6.8, 6.9],
        budget: [{ source: 'gain', u: 0.01, shape: 'normal', dof: Number.POSITIVE_INFINITY, origin: 'test' }],
        evidence: [],
        formula: 'the last value',
        notes: [],
      },
    ],
    limits: () => ({ rail: { min: 5, unit: 'V', kind: 'common practice', source: 'test' } }),
    ...more,
  };
}
