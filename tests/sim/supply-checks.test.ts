// SPDX-License-Identifier: MIT
// The supply's checks on the compiled firmware and the virtual bench: a healthy car passes with the truth inside every
// interval, each fault of the area is caught.
import { describe, expect, it } from 'vitest';
import { checkById } from '#checks/index';
import type { RunRecord } from '#core/record/run-record';
import { runCheck } from '#session/check-runner';
import { label } from '#session/session-fixture';
import { faultTable, type FaultName } from '#sim/faults/faults';
import type { VirtualRig } from '#sim/virtual-rig';
import { benchInProcess } from '../support/bench-in-process.ts';

async function run(checkId: string, seed: number, fault?: FaultName) {
  const { rig, session, car } = await benchInProcess(seed, fault ? { [fault]: 1 } : {});
  const check = checkById(checkId)!;
  const { record } = await runCheck(session, check, { car, label, ask: async (words) => rig.person(words) });
  const truth = rig.plant.truth();
  await session.close();
  return { record, truth };
}
function coversTruth({ findings }: RunRecord, truth: Readonly<Record<string, number>>): void {
  for (const finding of findings) {
    if (!finding.measured) throw new Error(`${finding.id}: ${finding.reason}`);
    expect(truth[finding.id], finding.id).toBeGreaterThanOrEqual(finding.interval[0]);
    expect(truth[finding.id], finding.id).toBeLessThanOrEqual(finding.interval[1]);
  }
}
const healthy = [
  ['rest-voltage', 5],
  ['first-power', 1],
  ['rail-setting', 1],
  ['pack-sag', 1],
  ['rail-ripple', 1],
  ['pack-ripple', 1],
] as const;
describe('a healthy car', () => {
  it.each(healthy)('passes %s with the truth inside, seed %i', async (checkId, seed) => {
    const { record, truth } = await run(checkId, seed);
    expect(record.verdict).toBe('pass');
    coversTruth(record, truth);
  });
});
/** One of each check; every other fault of the area is in the studies. */
const ofArea: readonly FaultName[] = [
  'reversed-pack',
  'missing-capacitor',
  'wrong-rail-setting',
  'ringing-rail',
  'dried-capacitor',
];
describe('a faulty car', () => {
  it.each(ofArea)('%s is caught by its check', async (name) => {
    const { check, verdict, result } = faultTable.find((fault) => fault.name === name)!;
    const { record } = await run(check, 3, name);
    const judged = record.judged.find(({ id }) => id === result);
    expect(judged?.verdict ?? record.verdict).toBe(verdict === 'fail' ? 'fail' : 'not measured');
  });
});
describe('a first power that failed', () => {
  it('opens the feed within 0.3 s and keeps it open for every other check, until one passes', async () => {
    const { rig, session, car } = await benchInProcess(1, { 'reversed-controller': 1 });
    const ask = async (words: string) => rig.person(words);
    const log = feedLog(rig);
    const first = (await runCheck(session, checkById('first-power')!, { car, label, ask })).record;
    expect(first.verdict).toBe('fail');
    expect(log.map(({ level }) => level)).toEqual(['limited', 'off']);
    expect(log[1].atS - log[0].atS).toBeLessThan(0.3);
    const next = (await runCheck(session, checkById('rail-sag')!, { car, label, ask })).record;
    expect(next.verdict).toBe('not measured');
    expect(next.ending.words).toMatch(/"First power.*" failed in this session/);
    expect(log).toHaveLength(2);
    await session.close();
  });
});
/** Every change of the feed at the registers, in true time. */
function feedLog(rig: VirtualRig): { level: string; atS: number }[] {
  const log: { level: string; atS: number }[] = [];
  const told = rig.board.onOutputs;
  rig.board.onOutputs = (cycle) => {
    told(cycle);
    const { feed } = rig.plant.inputs;
    if (feed !== (log.at(-1)?.level ?? 'off')) log.push({ level: feed, atS: cycle / rig.trueHz });
  };
  return log;
}
