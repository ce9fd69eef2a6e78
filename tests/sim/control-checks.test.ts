// SPDX-License-Identifier: MIT
// Checks of radio, receiver, joints and throttle range on the compiled firmware and the virtual bench: a healthy car
// passes with the truth inside the intervals, each fault of the radio is caught. Faults of joints, winding and range are
// caught on the bare plant: control-on-plant.test.ts.
import { describe, expect, it } from 'vitest';
import { checkById } from '#checks/index';
import { withProposal } from '#checks/proposal';
import type { Car } from '#core/parts/part';
import type { RunRecord } from '#core/record/run-record';
import { runCheck } from '#session/check-runner';
import { label } from '#session/session-fixture';
import { faultTable, type FaultName } from '#sim/faults/faults';
import { benchInProcess } from '../support/bench-in-process.ts';

const seed = 2;
/** The one joint that the fault spoils: each takes ten seconds of rig time. */
const solderOnly = (car: Car): Car => ({
  ...car,
  leads: { ...car.leads!, joints: car.leads!.joints!.filter(({ kind }) => kind === 'solder') },
});
async function run(checkId: string, fault?: FaultName) {
  const { rig, session, car } = await benchInProcess(seed, fault ? { [fault]: 1 } : {});
  const check = checkById(checkId)!;
  const ask = async (words: string) => rig.person(words);
  const { record } = await runCheck(session, check, { car: solderOnly(car), label, ask });
  const { trueHz } = rig;
  const truth = rig.plant.truth();
  await session.close();
  return { record, truth, car, trueHz };
}
function coversTruth({ findings }: RunRecord, truth: Readonly<Record<string, number>>): void {
  for (const finding of findings) {
    if (!finding.measured) throw new Error(`${finding.id}: ${finding.reason}`);
    if (truth[finding.id] === undefined) continue;
    expect(truth[finding.id], finding.id).toBeGreaterThanOrEqual(finding.interval[0]);
    expect(truth[finding.id], finding.id).toBeLessThanOrEqual(finding.interval[1]);
  }
}
describe('a healthy car', () => {
  it.each(['failsafe', 'throttle-range'])('passes %s, the truth inside', async (checkId) => {
    const { record, truth } = await run(checkId);
    expect(record.verdict).toBe('pass');
    coversTruth(record, truth);
  });
  it("passes radio-range, and the rig drives what the radio gave, by the rig's own clock", async () => {
    const { record, truth, car, trueHz } = await run('radio-range');
    expect(record.verdict).toBe('pass');
    coversTruth(record, truth);
    const proposal = checkById('radio-range')!.proposes!(record.findings, record.clock)!;
    const { throttle } = withProposal(car, proposal).controller;
    const heard = [truth['throttle-brake'], truth['throttle-neutral'], truth['throttle-full']];
    const driven = [throttle.lowUs, throttle.neutralUs, throttle.highUs].map((us) => (us * 16e6) / trueHz);
    driven.forEach((us, k) => expect(Math.abs(us - heard[k])).toBeLessThan(1));
  });
  it('passes joint-drop, the truth of the solder joint inside', async () => {
    const { record, truth } = await run('joint-drop');
    expect(record.verdict).toBe('pass');
    coversTruth({ ...record, findings: record.findings.slice(2) }, { 'joint-1': truth['joint-3'] });
  });
});
const ofArea: readonly FaultName[] = ['crossed-channels', 'reversed-throttle', 'no-fail-safe'];
describe('a faulty car', () => {
  it.each(ofArea)('%s fails by the result that it spoils', async (name) => {
    const { check, verdict, result } = faultTable.find((fault) => fault.name === name)!;
    const { record } = await run(check, name);
    expect(verdict).toBe('fail');
    expect(record.verdict).toBe('fail');
    expect(record.judged.find(({ id }) => id === result)?.verdict).toBe('fail');
  });
});
