// SPDX-License-Identifier: MIT
// A rotor turned evenly past three sensors 120 degrees apart: the six-step code of common tables (from memory) gives the
// order of the edges, its halves and what never happens; each fault of a cable must show in its own result.
import { describe, expect, it } from 'vitest';
import type { Finding, Measured } from '#core/measurements/measurement';
import { testRig } from '#core/samples/scan-block-fixture';
import { judge } from '#core/verdicts/judge';
import { marmot } from '../synthetic-run-fixture.ts';
import { analyse, results } from './analysis.ts';
import { evenShares, orderOf, steps } from './hall-steps.ts';
import { limits } from './limits.ts';
import {
  backwards,
  evenTurning,
  joined,
  type LineTimes,
  turnedRotor,
  type Turning,
} from './turned-rotor-fixture.ts';

const evidence = {
  forward: { fromS: 0.5, toS: 5.5 },
  backward: { fromS: 5.6, toS: 10.6 },
  moved: { fromS: 10.7, toS: 15.5 },
};
const part = (fromS: number, share?: number[]) => evenTurning(fromS, 9, 0.5, share);
const turning = (share?: number[]): LineTimes =>
  joined(part(0.7, share), backwards(part(5.8, share), 5.8, 10.3), part(10.9, share));
const analysed = (change: Partial<Turning> = {}, rig = testRig()) =>
  analyse({
    evidence,
    samples: turnedRotor({ times: turning(), untilS: 16, ...change }, rig),
    rig,
    car: marmot,
  });
const find = (findings: readonly Finding[], id: string) => findings.find((finding) => finding.id === id)!;
const valueOf = (findings: readonly Finding[], id: string) => (find(findings, id) as Measured).value;
/** Of the results named; judging costs a propagation each. */
function verdicts(findings: readonly Finding[], ...ids: string[]) {
  const held = limits(marmot);
  return Object.fromEntries(ids.map((id) => [id, judge(find(findings, id), held[id]).verdict]));
}
const without = (line: number): LineTimes =>
  turning().map((list, k) => (k === line ? [] : list)) as unknown as LineTimes;
const blip = (atS: number, line: number): LineTimes =>
  [0, 1, 2].map((k) => (k === line ? [atS, atS + 0.012] : [])) as unknown as LineTimes;

describe('sensor-cable refuses', () => {
  it('a rotor that nobody turned, with the plug named', () =>
    expect(find(analysed({ times: [[], [], []] }), 'hall-order')).toMatchObject({
      measured: false,
      reason: expect.stringMatching(/Hardly an edge.*sensor adapter/),
    }));
  it('blocks lost while turning', () =>
    expect(find(analysed({ lost: (t) => t > 3 && t < 3.1 }), 'hall-liveness')).toMatchObject({
      reason: expect.stringMatching(/Blocks were lost/),
    }));
  it('a rotor turned too fast to tell which line came first', () => {
    const fast = joined(evenTurning(0.7, 160, 0.03), evenTurning(5.7, 160, 0.03));
    expect(find(analysed({ times: fast }), 'hall-order')).toMatchObject({
      reason: expect.stringMatching(/too fast/),
    });
  });
  it('a rig without the motor thermistor, for the thermistor alone', () => {
    const findings = analysed({}, testRig({}, ['thermistorMotor']));
    expect(find(findings, 'sensor-thermistor-offset')).toMatchObject({
      reason: expect.stringMatching(/no tap "thermistorMotor"/),
    });
    expect(find(findings, 'hall-order').measured).toBe(true);
  });
});
describe('sensor-cable', () => {
  it('lists every result once and passes a sound cable', () => {
    const findings = analysed();
    expect(findings.map(({ id }) => id)).toEqual(results.map(({ id }) => id));
    expect(new Set(Object.values(verdicts(findings, ...results.map(({ id }) => id))))).toEqual(
      new Set(['pass']),
    );
  });
  it('gives the halves of each line back: 50, 46 and 57 %, the longer ones', () => {
    const findings = analysed({ times: turning([0.5, 0.46, 0.57]) });
    expect(valueOf(findings, 'hall-a-longer-half')).toBeCloseTo(50, 0);
    expect(valueOf(findings, 'hall-b-longer-half')).toBeCloseTo(54, 0);
    expect(valueOf(findings, 'hall-c-longer-half')).toBeCloseTo(57, 0);
  });
  it('a line so uneven that its edge meets its neighbour: measured and failed, not called turned too fast', () => {
    const findings = analysed({ times: turning([0.5, 0.66, 0.5]) });
    expect(valueOf(findings, 'hall-b-longer-half')).toBeCloseTo(66, 0);
    expect(verdicts(findings, 'hall-b-longer-half')).toEqual({ 'hall-b-longer-half': 'fail' });
  });
  it.each([
    [0, 'A'],
    [1, 'B'],
    [2, 'C'],
  ])('names dead line %d as %s and fails its liveness alone', (line, name) => {
    const findings = analysed({ times: without(line) });
    expect(verdicts(findings, 'hall-liveness', 'hall-order')).toEqual({
      'hall-liveness': 'fail',
      'hall-order': 'not measured',
    });
    expect((find(findings, 'hall-liveness') as Measured).notes[0]).toMatch(
      new RegExp(`^Hall line ${name} gives`),
    );
    expect(find(findings, `hall-${name.toLowerCase()}-longer-half`).measured).toBe(false);
  });
  it('fails the order of two swapped lines, and says that the pair is not told', () => {
    const [a, b, c] = turning();
    const findings = analysed({ times: [a, c, b] });
    expect(valueOf(findings, 'hall-order')).toBe(0);
    expect(verdicts(findings, 'hall-order')['hall-order']).toBe('fail');
    expect((find(findings, 'hall-order') as Measured).notes[0]).toMatch(/two of the three lines are swapped/);
  });
  it('tells a pulse while turning from one while the cable is moved', () => {
    const quiet = analysed({ times: joined(turning(), blip(3.1, 1)) });
    expect(verdicts(quiet, 'hall-extra-edges', 'hall-drop-outs')).toEqual({
      'hall-extra-edges': 'fail',
      'hall-drop-outs': 'pass',
    });
    expect(verdicts(quiet, 'hall-order')['hall-order']).toBe('pass');
    const moved = analysed({ times: joined(turning(), blip(13.1, 2)) });
    expect(verdicts(moved, 'hall-extra-edges', 'hall-drop-outs')).toEqual({
      'hall-extra-edges': 'pass',
      'hall-drop-outs': 'fail',
    });
  });
  it('fails states that no rotor makes', () => {
    const findings = analysed({ invalid: [1, 2, 3, 4, 5, 6] });
    expect(verdicts(findings, 'hall-invalid-states')['hall-invalid-states']).toBe('fail');
  });
  it.each([
    ['open', 1023],
    ['shorted', 0],
  ])('fails a thermistor that is %s for a moment while the cable is moved', (_, code) => {
    const findings = analysed({ motorCode: (t) => (t > 12 && t < 12.05 ? code : 512) });
    expect(verdicts(findings, 'sensor-thermistor-lost', 'sensor-thermistor-offset')).toEqual({
      'sensor-thermistor-lost': 'fail',
      'sensor-thermistor-offset': 'pass',
    });
  });
  it('fails a motor that reads 6 K above the room, and asks whether it has just run', () => {
    const findings = analysed({ motorCode: () => 445 });
    expect(verdicts(findings, 'sensor-thermistor-offset')['sensor-thermistor-offset']).toBe('fail');
    expect((find(findings, 'sensor-thermistor-offset') as Measured).notes[0]).toMatch(/let it cool/);
  });
});
describe('steps', () => {
  const of = (times: LineTimes) => steps(turnedRotor({ times, untilS: 6 }), { fromS: 0, toS: 6 });
  it('run A, C, B in the running direction and A, B, C against it', () => {
    expect(orderOf(of(part(1)))).toMatchObject({ against: 0, together: 0 });
    expect(orderOf(of(backwards(part(1), 1, 5.5))).inOrder).toBe(0);
  });
  it('take a hand that goes back over an edge for no pulse', () => {
    const [a, b, c] = part(1);
    // Forward over the first edge of A, 0.3 s later back over it, 0.3 s later forward again.
    const wavering: LineTimes = [[a[0], a[0] + 0.05, a[0] + 0.11, ...a.slice(1)], b, c];
    expect(of(wavering).pairs).toBe(0);
  });
  it('give a share only where the levels alternate', () => {
    const shares = evenShares(of(evenTurning(1, 5, 1, [0.4, 0.5, 0.5])), 0);
    expect(shares.length).toBe(8);
    const [first] = shares;
    for (const share of shares) expect(share).toBeCloseTo(first, 1);
    expect(Math.max(first, 1 - first)).toBeCloseTo(0.6, 1);
  });
});
