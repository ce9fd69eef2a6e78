// SPDX-License-Identifier: MIT
// A plan's file: what can't be resumed is refused with words, what can is read back; exit codes of a plan.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { emptyRecord, withOutcome } from '#checks/plans/plan-record';
import { exitOfPlan } from './exit-code.ts';
import { answerIn } from './looks.ts';
import { readPlanFile, type PlanFile } from './plan-file.ts';
import { keepPlan } from './record-file.ts';

const folder = mkdtempSync(join(tmpdir(), 'plan-file-'));
afterAll(() => rmSync(folder, { recursive: true }));
const path = join(folder, 'plan.json');
const at = '2026-01-01T00:00:00.000Z';
const look = { key: 'wires', at, kind: 'look', verdict: 'pass', words: 'fine' } as const;
const file: PlanFile = { ...withOutcome(emptyRecord('whole-car', 'Marmot', at), look), runs: [] };
const reading = (content: string, plan = 'whole-car', car = 'Marmot') => {
  writeFileSync(path, content);
  return () => readPlanFile(path, plan, car);
};

describe('a plan that is to be resumed', () => {
  it('refuses a file that is not there', () =>
    expect(() => readPlanFile(join(folder, 'none.json'), 'whole-car', 'Marmot')).toThrow(/can't be read/));
  it.each([
    ['a text', 'half a plan', /is not JSON/],
    ['another record', '{"format":"bench run record","version":1}', /no plan record/],
    ['a later version', JSON.stringify({ ...file, version: 2 }), /another version/],
  ])('refuses %s', (_, content, words) => expect(reading(content)).toThrow(words));
  it('refuses the record of another plan and of another car', () => {
    expect(reading(JSON.stringify(file), 'after-crash')).toThrow(
      /of the plan "whole-car", not "after-crash"/,
    );
    expect(reading(JSON.stringify(file), 'whole-car', 'Vole')).toThrow(/of the car "Marmot", not "Vole"/);
  });
  it('reads what was kept', () => {
    keepPlan(path, file);
    expect(readPlanFile(path, 'whole-car', 'Marmot')).toEqual(file);
  });
});
describe('the exit code of a plan', () => {
  it.each([
    [[0, 3, 1, 4, 5], 5],
    [[0, 3, 1, 4], 4],
    [[0, 3, 1], 1],
    [[0, 3], 3],
    [[0, 0], 0],
  ])('of %j is %i', (codes, code) => expect(exitOfPlan(codes)).toBe(code));
});
describe('what was seen', () => {
  it.each([
    ['y', 'fine'],
    [' Yes ', 'fine'],
    ['n', 'not fine'],
    ['', 'not looked at'],
    ['later', 'not looked at'],
  ])('"%s" means %s', (line, answer) => expect(answerIn(line)).toBe(answer));
});
