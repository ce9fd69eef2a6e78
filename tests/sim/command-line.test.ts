// SPDX-License-Identifier: MIT
// `npm run check` from outside: exit codes, one JSON document, words for people, a record that judges the same
// again. The rig is the compiled firmware in process.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkById, checks } from '#checks/index';
import { faultTable } from '#sim/faults/faults';
import { readRecord } from '#core/record/record-reader';
import { recompute } from '#core/record/recompute';

const top = join(import.meta.dirname, '../..');
const folder = mkdtempSync(join(tmpdir(), 'command-line-'));
function check(...words: string[]) {
  const ended = spawnSync('npm', ['run', 'check', '--', ...words], { cwd: top, encoding: 'utf8' });
  return { code: ended.status, out: ended.stdout, errors: ended.stderr };
}
const ended = (code: number, out: string) => ({ code, document: JSON.parse(out) as Record<string, unknown> });

describe('the command line on the virtual rig', () => {
  it('lists every check with its needs, every plan and every fault', () => {
    const { code, document } = ended(0, check('list', '--json').out);
    expect(code).toBe(0);
    const listed = document.checks as { id: string; title: string; needs: { taps: string[] } }[];
    expect(listed.map(({ id }) => id)).toEqual(checks.map(({ id }) => id));
    expect(listed.find(({ id }) => id === 'rail-sag')?.needs.taps).toContain('railVoltage');
    expect(document.plans).toHaveLength(8);
    expect(document.faults).toHaveLength(faultTable.length);
  });
  it('passes a healthy motor, tells the truth beside it, and keeps a record that judges the same again', () => {
    const path = join(folder, 'run.json');
    const run = check('run', 'motor-no-load', '--rig', 'virtual', '--seed', '2', '--json', '--record', path);
    expect(run.code).toBe(0);
    const { document } = ended(0, run.out);
    expect(document).toMatchObject({ check: 'motor-no-load', verdict: 'pass', ending: 'done' });
    const results = document.results as { id: string; value: number; interval: [number, number] }[];
    const truth = document.truth as Record<string, number>;
    for (const { id, value, interval } of results) {
      expect(Math.abs(value - truth[id])).toBeLessThan(1.5 * (interval[1] - interval[0]));
      expect(interval[0]).toBeLessThan(value);
    }
    const record = readRecord(readFileSync(path, 'utf8'));
    const again = recompute(record, checkById('motor-no-load')!);
    expect(again.verdict).toBe('pass');
    again.findings.forEach((finding, i) => {
      const kept = record.findings[i];
      if (!finding.measured || !kept.measured) throw new Error('not measured');
      expect(finding.value).toBeCloseTo(kept.value, 9);
    });
  });
  it('fails a weak rotor with exit code 1 and says which limit', () => {
    const run = check('run', 'motor-no-load', '--rig', 'virtual', '--seed', '2', '--fault', 'weak-rotor=1');
    expect(run.code).toBe(1);
    expect(run.out).toMatch(
      /Verdict: Fail\nReason: kV is \d+ rpm\/V; at least \d+, at most \d+ rpm\/V \(rating: label/,
    );
    expect(run.out).toMatch(/Caution: /);
  });
  it('ends with 4 when the stop line opens, every result not measured with the reason', () => {
    const run = check('run', 'motor-no-load', '--rig', 'virtual', '--fault', 'stop-line-open=1', '--json');
    expect(run.code).toBe(4);
    const { document } = ended(4, run.out);
    expect(document).toMatchObject({
      verdict: 'not measured',
      ending: 'tripped',
      reason: 'The stop line opened.',
    });
    for (const result of document.results as object[])
      expect(result).toMatchObject({ value: null, interval: null, reason: 'The stop line opened.' });
  });
  it('ends with 3 when a thermistor is open, and names it', () => {
    const run = check('run', 'motor-no-load', '--rig', 'virtual', '--fault', 'open-thermistor=1', '--json');
    expect(run.code).toBe(3);
    expect(ended(3, run.out).document.reason).toMatch(/"motor can" is open/);
  });
  it('ends with 3, not 5, on a noisy cable: the link is there, the results are not', () => {
    const run = check(
      'run',
      'rail-sag',
      '--rig',
      'virtual',
      '--seed',
      '6',
      '--fault',
      'noisy-cable=1',
      '--json',
    );
    expect(run.code).toBe(3);
    const { document } = ended(3, run.out);
    expect(document).toMatchObject({ verdict: 'not measured' });
    expect(document.reason).toMatch(/Check the cable/);
  });
  it.each([
    [2, 'unknownCheck', ['run', 'wheel-balance', '--rig', 'virtual']],
    [2, 'unknownFault', ['run', 'rail-sag', '--rig', 'virtual', '--fault', 'rust=1']],
    [2, 'badFlag', ['run', 'rail-sag', '--rig', 'virtual', '--colour', 'red']],
    [2, 'badFile', ['run', 'rail-sag', '--rig', 'virtual', '--record', '/nowhere/at/all.json']],
    [2, 'badFile', ['run', 'rail-sag', '--rig', '/dev/null', '--car', '/nowhere/car.json']],
    [5, 'noRig', ['run', 'rail-sag', '--rig', '/dev/no-such-device', '--seed', '1']],
    [5, 'noRig', ['run', 'rail-sag', '--rig', '/dev/null', '--seed', '1']],
  ] as const)('ends with %i and the error %s', (code, name, words) => {
    const run = check(...words, '--json');
    expect(run.code).toBe(code);
    const { error } = ended(code, run.out).document as { error: { code: string; message: string } };
    expect(error.code).toBe(name);
    expect(error.message.length).toBeGreaterThan(20);
  });
});
