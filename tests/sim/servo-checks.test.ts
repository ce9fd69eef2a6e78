// SPDX-License-Identifier: MIT
// The checks of a servo out of the car: on the emulated firmware, with the figures that its person reads; and on the
// plant's servo alone, a hundred times as fast, for each fault and what is no fault.
import { describe, expect, it } from 'vitest';
import type { Check } from '#checks/check';
import { servoCentre } from '#checks/servo-centre/check';
import { servoIdle } from '#checks/servo-idle/check';
import { servoNoLoad } from '#checks/servo-no-load/check';
import { servoSpeed } from '#checks/servo-speed/check';
import { servoStall } from '#checks/servo-stall/check';
import { runCheck } from '#session/check-runner';
import type { FaultName } from '#sim/faults/faults';
import { openVirtual } from '../../bench-sim/harness/bench-place.ts';
import { outside, runOnServo } from '../support/servo-bench.ts';

const label = { id: 'r', startedAt: '2031-05-04T10:00:00.000Z', tool: 'test' };
async function emulated<E>(check: Check<E>, seed: number) {
  const { session, car, hands, virtual } = await openVirtual(seed);
  const { record } = await runCheck(session, check as Check, { car, label, ask: hands });
  await session.close();
  return { verdict: record.verdict, findings: record.findings, truth: virtual.truth() };
}
describe('on the emulated firmware a healthy servo passes with the truth inside', () => {
  it.each([
    ['servo-centre', servoCentre, 2],
    ['servo-no-load', servoNoLoad, 2],
  ] as const)('%s', async (_, check, seed) => {
    const run = await emulated(check as unknown as Check, seed);
    expect(run.verdict).toBe('pass');
    expect(outside(run)).toEqual([]);
    for (const { id } of check.results) expect(run.truth).toHaveProperty(id);
  });
});
describe('on the servo alone a healthy one passes with the truth inside', () => {
  it.each([
    ['servo-centre', servoCentre, 4],
    ['servo-idle', servoIdle, 4],
    ['servo-no-load', servoNoLoad, 5],
    ['servo-speed', servoSpeed, 3],
    ['servo-speed', servoSpeed, 6],
    ['servo-stall', servoStall, 2],
  ] as const)('%s, car %#', async (_, check, seed) => {
    const run = await runOnServo(check as unknown as Check, seed);
    expect(new Set(Object.values(run.verdicts))).toEqual(new Set(['pass']));
    expect(outside(run)).toEqual([]);
  });
  // 22, 38 and 39 look at their pulse every 20 ms; they are the slowest of cars 1 to 40.
  it.each([2, 22, 38, 39])('knows the time for 60 degrees of car %i within 3 ms', async (seed) => {
    const { findings, truth } = await runOnServo(servoSpeed, seed);
    const [time] = findings;
    if (!time.measured) throw new Error(time.reason);
    expect(Math.abs(time.value - truth['time-per-60'])).toBeLessThan(0.003);
  });
});
describe('a fault fails where it must', () => {
  it.each<[FaultName, string, Check]>([
    ['horn-tooth-off', 'horn-offset', servoCentre as Check],
    ['hunting-servo', 'hunting-current', servoIdle as Check],
    ['wide-dead-band', 'dead-band', servoIdle as Check],
    ['stiff-gear-train', 'moving-current', servoNoLoad as Check],
    ['tight-spot', 'tight-spot', servoNoLoad as Check],
    ['stiff-gear-train', 'time-per-60-rated', servoSpeed as Check],
    ['failing-servo-motor', 'stall-current', servoStall as Check],
  ])('%s by %s', async (fault, result, check) => {
    const { verdicts } = await runOnServo(check, 3, { [fault]: 1 });
    expect(verdicts[result]).toBe('fail');
  });
  it('a tight spot is found where it is', async () => {
    const { findings, bench } = await runOnServo(servoNoLoad, 3, { 'tight-spot': 1 });
    const spot = findings.find(({ id }) => id === 'tight-spot');
    const foundUs = Number(/pulse of (\d+) µs/.exec(spot?.measured ? spot.notes[0] : '')?.[1]);
    const { centreS, radPerS, tightAtRad } = bench.plant.car.servo;
    expect(Math.abs(foundUs - (centreS + tightAtRad / radPerS) * 1e6)).toBeLessThan(45);
  });
});
it('a servo that hunts where its moves end is told so by servo-speed', async () => {
  const { findings } = await runOnServo(servoSpeed, 10, { 'hunting-servo': 1 });
  for (const finding of findings)
    expect(finding.measured ? '' : finding.reason).toMatch(/does not come to rest.*it hunts/);
});
describe('a failing motor', () => {
  // Free running is ruled by the motor's constant: (V - I R)/k with a tenth of the stall current in it.
  it('runs free nearly as fast, which servo-speed tells as it is: its stall current finds it', async () => {
    const [sound, failing] = [
      await runOnServo(servoSpeed, 2),
      await runOnServo(servoSpeed, 2, { 'failing-servo-motor': 1 }),
    ];
    const slower = failing.truth['time-per-60-rated'] / sound.truth['time-per-60-rated'];
    expect(slower).toBeGreaterThan(1.02);
    expect(slower).toBeLessThan(1.15);
    expect(failing.verdicts['time-per-60-rated']).toBe('pass');
    expect(outside(failing)).toEqual([]);
  });
});
describe('what is no fault of a servo is called none', () => {
  it.each<[FaultName, RegExp]>([
    ['soft-start-servo', /Soft start: .* which is no fault/],
    ['current-limited-servo', /electronics limit its current, which is no fault/],
  ])('%s', async (kind, words) => {
    const run = await runOnServo(servoStall, 3, { [kind]: 1 });
    const [stall] = run.findings;
    expect(run.verdicts['stall-current']).toBe('pass');
    expect(outside(run)).toEqual([]);
    expect(stall.measured && stall.notes.join(' ')).toMatch(words);
  });
});
