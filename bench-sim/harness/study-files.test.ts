// SPDX-License-Identifier: MIT
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { BadUsage } from './bad-usage.ts';
import { parseStudyArguments } from './study-arguments.ts';
import { readStudies } from './study-files.ts';

const folder = mkdtempSync(join(tmpdir(), 'study-'));
function file(name: string, content: unknown): string {
  const path = join(folder, name);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}
const cell = (seed: number) => ({
  check: 'rail-sag',
  seed,
  faults: {},
  verdict: 'pass',
  ending: 'done',
  reason: '',
  results: [],
  rigS: 20,
  wallS: 2,
});
const study = (seed: number, more = {}) => ({
  date: `2026-11-${seed}`,
  solved: true,
  outcomes: [cell(seed)],
  ...more,
});

describe('the words of a study', () => {
  it.each([
    ['--pool', /--pool takes the files/],
    ['a.json', /Unexpected argument 'a.json'/],
    ['--solve', /Unknown option '--solve'/],
    ['--faults rust', /There is no fault "rust"/],
    ['--severities much', /"much" is no severity/],
    ['--checks wheel-balance', /There is no check or plan "wheel-balance"/],
  ])('refuses "%s" with words', (line, told) => {
    const attempt = () => parseStudyArguments(line.split(' '));
    expect(attempt).toThrow(BadUsage);
    expect(attempt).toThrow(told);
  });
  it('takes files to pool', () => expect(parseStudyArguments(['--pool', 'a', 'b']).pool).toEqual(['a', 'b']));
});
describe('studies that are summed up together', () => {
  it.each([
    ['no file', () => join(folder, 'none.json'), /can't be read/],
    ['no JSON', () => file('half.json', '{"date":'), /is not JSON/],
    ['no study', () => file('car.json', { motor: {} }), /is no study: date:/],
    ['without cells', () => file('empty.json', study(20, { outcomes: [] })), /is no study: outcomes:/],
  ])('refuses a file that is %s', (_, path, told) => expect(() => readStudies([path()])).toThrow(told));
  it('refuses kinds that differ, and a cell that is there twice', () => {
    const one = file('one.json', study(20));
    const other = file('other.json', study(21, { solved: false }));
    expect(() => readStudies([one, other])).toThrow(/can not be pooled/);
    expect(() => readStudies([one, one])).toThrow(/seed 20 is in these files twice/);
  });
  it('puts their cells one after the other', () => {
    const pooled = readStudies([file('b.json', study(22)), file('a.json', study(21))]);
    expect(pooled.outcomes.map(({ seed }) => seed)).toEqual([22, 21]);
    expect(pooled).toMatchObject({ dates: ['2026-11-21', '2026-11-22'], solved: true });
  });
});
