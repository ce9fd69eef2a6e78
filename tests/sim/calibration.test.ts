// SPDX-License-Identifier: MIT
// A calibration on the compiled firmware: kept by the rig, tighter results with the truth inside, old ones told, and a
// write that is cut. The person reads a simulated meter.
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { crc16 } from '#protocol/crc';
import { checkById } from '#checks/index';
import { storeBytes } from '#core/calibration/store-form';
import { usualMeter } from '#core/calibration/meter';
import { calibrate, type CalibrationReport } from '#session/calibration/calibrate';
import type { ActQuestion, MeterQuestion } from '#session/calibration/calibration-hands';
import { runCheck } from '#session/check-runner';
import { RigSession } from '#session/rig-session';
import { drawCar, drawParameters } from '#sim/physics/population';
import { VirtualLink } from '#sim/virtual-link';
import { VirtualMeter } from '#sim/virtual-meter';
import { createVirtualRig } from '#sim/virtual-rig';
import { MeteredPlant } from '#sim/wiring/metered-plant';
import { hexFile } from '../support/bench-in-process.ts';

const seed = 2;
const hex = readFileSync(hexFile, 'utf8');
async function bench(store?: Uint8Array, day = '2026-11-25') {
  const { plant, car } = drawCar(seed);
  const metered = new MeteredPlant(plant);
  const rig = createVirtualRig({ hex, plant: metered, seed, store });
  const link = new VirtualLink(rig);
  const session = new RigSession(link, link.clock, {
    mayBeat: () => true,
    randomWord: () => seed,
    today: () => day,
  });
  await session.connect();
  const meter = new VirtualMeter(metered, usualMeter, drawParameters(seed).line.limiterOhm, seed);
  return { rig, link, session, car, meter, plant };
}
type Bench = Awaited<ReturnType<typeof bench>>;
const wish = ({ car, meter }: Bench, taps: readonly string[]) => ({
  taps,
  meter: usualMeter,
  car,
  hands: {
    act: async ({ words }: ActQuestion) => meter.act(words),
    read: async ({ place }: MeterQuestion) => meter.read(place),
  },
  today: '2026-11-25',
  thermistorsIn: 'ice' as const,
  feedBy: 'meter' as const,
});
async function railRun(store?: Uint8Array, day?: string) {
  const { session, car, rig, plant } = await bench(store, day);
  const check = checkById('rail-sag')!;
  const label = { id: 'a', startedAt: '2026-11-25T00:00:00Z', tool: 'test' };
  const { record } = await runCheck(session, check, { car, label, ask: async (words) => rig.person(words) });
  await session.close();
  return { record, truth: plant.truth() };
}
const half = ({ record }: Awaited<ReturnType<typeof railRun>>, id: string) => {
  const found = record.findings.find((finding) => finding.id === id);
  if (!found?.measured) throw new Error(`${id} was not measured`);
  return { value: found.value, half: (found.interval[1] - found.interval[0]) / 2, interval: found.interval };
};

describe('a calibrated rig', () => {
  let store: Uint8Array;
  let report: CalibrationReport;
  beforeAll(async () => {
    const before = await bench();
    report = await calibrate(before.session, wish(before, ['railVoltage', 'packCurrentNarrow']));
    await before.session.close();
    store = before.rig.exportStore();
  }, 120_000);

  it('keeps what was adopted, and gives the true value within U', () => {
    expect(report).toMatchObject({ stored: true });
    expect(report.outcomes.map(({ tap, state }) => `${tap} ${state}`)).toEqual([
      'railVoltage adopted',
      'packCurrentNarrow adopted',
    ]);
  });
  it('measures the rail tighter, the truth still inside, and the record carries the calibration', async () => {
    const [plain, kept] = [await railRun(), await railRun(store)];
    for (const id of ['rail-at-rest', 'deepest-dip']) {
      expect(half(kept, id).half).toBeLessThan(0.8 * half(plain, id).half);
      const [low, high] = half(kept, id).interval;
      expect(kept.truth[id]).toBeGreaterThan(low);
      expect(kept.truth[id]).toBeLessThan(high);
    }
    expect(kept.record.rig.store?.calibration.map(({ tap }) => tap)).toContain('railVoltage');
    expect(kept.record.rig.store?.serial).toMatch(/^[0-9a-z]{1,7}$/);
    const told = kept.record.events.filter(({ kind }) => kind === 'calibration');
    expect(told[0].words).toMatch(/^Not calibrated: /);
    expect(told[0].words).not.toContain('railVoltage');
  }, 240_000);
  it('widens what is older than a year and says so on connecting', async () => {
    const [now, later] = [await bench(store), await bench(store, '2028-01-01')];
    const [fresh, old] = [now, later].map(({ session }) => session.rig.store!.calibration[0]);
    expect(old.gainU).toBeCloseTo(1.5 * fresh.gainU, 9);
    expect(later.session.notes[0]).toMatch(/calibration of railVoltage of 2026-11-25 is older than a year/);
    expect(later.session.keptStore).toEqual(now.session.keptStore);
  }, 60_000);
});
describe('a write that is cut', () => {
  const line = { tap: 'railVoltage', gain: 1, offset: 0.01, gainU: 0.004, offsetU: 0.01, correlation: 0 };
  const storeOf = (name: string) => ({
    serial: 'B-1',
    name,
    calibration: [{ ...line, date: '2026-11-25', origin: 'meter' }],
  });
  /** Pieces of a second store, then the power goes: before the commit, or while its header is being written. */
  async function cut(first: boolean, afterCommitMs: number | null) {
    const { rig, link, session } = await bench();
    if (first) await session.keep(storeOf('first'));
    const bytes = storeBytes(storeOf('second'), session.rig.descriptor);
    const pause = (ms: number) => new Promise<void>((done) => link.clock.after(ms, done));
    for (let offset = 0; offset < bytes.length; offset += 32) {
      await session.ask({ type: 'writeStore', offset, bytes: bytes.slice(offset, offset + 32) });
      await pause(130);
    }
    if (afterCommitMs !== null) {
      await session.ask({ type: 'commitStore', length: bytes.length, crc: crc16(bytes) });
      await pause(afterCommitMs);
    }
    const after = await bench(rig.exportStore());
    return after.session;
  }
  it('leaves a blank rig blank, whose taps then count as not calibrated', async () => {
    for (const afterCommitMs of [null, 8]) expect((await cut(false, afterCommitMs)).rig.store).toBeNull();
  }, 60_000);
  it('leaves what was kept before, until the last byte of the header is there', async () => {
    for (const afterCommitMs of [null, 3, 15])
      expect((await cut(true, afterCommitMs)).rig.store?.name).toBe('first');
    expect((await cut(true, 60)).rig.store?.name).toBe('second');
  }, 60_000);
  it('takes a spoilt half as missing: the CRC of its bytes does not agree', async () => {
    const { rig, session } = await bench();
    await session.keep(storeOf('only'));
    const spoilt = rig.exportStore();
    const at = spoilt.findIndex((byte) => byte === '{'.charCodeAt(0));
    spoilt[at + 20] ^= 1;
    expect((await bench(spoilt)).session.rig.store).toBeNull();
  }, 60_000);
});
