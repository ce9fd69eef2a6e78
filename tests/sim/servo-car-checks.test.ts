// SPDX-License-Identifier: MIT
// The checks of a servo in its car on the compiled firmware and the virtual bench: a healthy car passes with the truth
// inside every interval that has one, each fault of the linkage is caught, and the stops are never pressed for long.
import { describe, expect, it } from 'vitest';
import type { Check } from '#checks/check';
import { checkById } from '#checks/index';
import { servoEndPoints } from '#checks/servo-end-points/check';
import { servoHeat } from '#checks/servo-heat/check';
import { procedureOf } from '#checks/servo-heat/procedure';
import type { RunRecord } from '#core/record/run-record';
import { runCheck } from '#session/check-runner';
import { label } from '#session/session-fixture';
import { faultTable, type FaultName } from '#sim/faults/faults';
import type { CarPlant } from '#sim/physics/whole-plant';
import { benchInProcess } from '../support/bench-in-process.ts';
import { runOnServo } from '../support/servo-bench.ts';

async function run(check: Check, seed: number, fault?: FaultName) {
  const { rig, session, car } = await benchInProcess(seed, fault ? { [fault]: 1 } : {});
  const noLook = (words: string) => fault !== undefined && words.startsWith('How many more looks');
  const ask = async (words: string) => (noLook(words) ? 0 : rig.person(words));
  const { record } = await runCheck(session, check, { car, label, ask });
  const { servo } = rig.plant as CarPlant;
  const truth = rig.plant.truth();
  await session.close();
  return { record, truth, pressedS: servo.linkage.pressedS };
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
  it('passes servo-end-points with the truth inside; three looks press the stops for less than 0.5 s in all', async () => {
    const { record, truth, pressedS } = await run(checkById('servo-end-points')!, 3);
    expect(record.verdict).toBe('pass');
    coversTruth(record, truth);
    expect(pressedS).toBeGreaterThan(0.05);
    expect(pressedS).toBeLessThan(0.5);
  });
  it('passes servo-scrub with the truth inside', async () => {
    const { record, truth, pressedS } = await run(checkById('servo-scrub')!, 4);
    expect(record.verdict).toBe('pass');
    coversTruth(record, truth);
    expect(pressedS).toBe(0);
  });
  it('has its case measured by a short servo-heat, which claims no more', async () => {
    const short = { ...servoHeat, procedure: (bench) => procedureOf(bench, 12) } as typeof servoHeat;
    const { record } = await run(short as Check, 1);
    const [end, tau, flag] = record.findings;
    expect(end.measured).toBe(true);
    expect(tau).toMatchObject({ measured: false, reason: expect.stringMatching(/longer/) });
    expect(flag.measured).toBe(false);
  });
});
describe('servo-end-points on the servo alone, three looks', () => {
  // Cars 4, 12 and 20 have their stops beyond the usual limits; the servos of 6, 22 and 23 look at their pulse every 20 ms.
  it.each([4, 6, 12, 20, 22, 23])(
    'finds both stops of car %i within 8 us and presses them for less than 0.5 s in all',
    async (seed) => {
      const { bench, findings, truth } = await runOnServo(servoEndPoints, seed);
      for (const id of ['end-point-left', 'end-point-right']) {
        const end = findings.find((finding) => finding.id === id);
        expect(Math.abs((end?.measured ? end.value : Infinity) - truth[id]), id).toBeLessThan(8);
      }
      expect(bench.plant.servo.linkage.pressedS).toBeLessThan(0.5);
    },
  );
  it('does not push on where stiff gears take much of the current', async () => {
    const { bench } = await runOnServo(servoEndPoints, 5, { 'stiff-gear-train': 1 });
    expect(bench.plant.servo.linkage.pressedS).toBeLessThan(0.5);
  });
});
describe('a faulty car', () => {
  it.each<FaultName>(['binding-left', 'slipping-horn', 'heavy-scrub'])(
    '%s is caught by its check',
    async (name) => {
      const { check, verdict, result } = faultTable.find((fault) => fault.name === name)!;
      const { record } = await run(checkById(check)!, 3, name);
      const judged = record.judged.find(({ id }) => id === result);
      expect(judged?.verdict ?? record.verdict).toBe(verdict === 'fail' ? 'fail' : 'not measured');
    },
  );
});
