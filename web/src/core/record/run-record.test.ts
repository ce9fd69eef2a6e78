// SPDX-License-Identifier: MIT
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { measured } from '../measurements/finding.ts';
import { reading } from '../measurements/tap-reading.ts';
import type { Car } from '../parts/part.ts';
import { scanBlock, testRig } from '../samples/scan-block-fixture.ts';
import { ScanColumns } from '../samples/scan-columns.ts';
import { judgeAll, overallVerdict } from '../verdicts/judge.ts';
import { resultsCsv, samplesCsv } from './csv-writer.ts';
import { packColumns } from './packed-columns.ts';
import { readRecord, RecordError, samplesOf, writeRecord } from './record-reader.ts';
import { recompute, type Judging } from './recompute.ts';
import { recordFormat, recordVersion, type RunRecord } from './run-record.ts';

const rig = testRig();
const car: Car = {
  name: 'Marmot',
  motor: {
    kind: 'motor',
    name: 'motor',
    turns: 13.5,
    polePairs: 1,
    sensored: true,
    ratedKvRpmPerV: 3000,
    ratedKvTolerance: 0.07,
    ratedSpeedRpm: 50000,
  },
  servo: {
    kind: 'servo',
    name: 'servo',
    digital: true,
    ratedVoltageV: 6,
    ratedStallTolerance: 0.2,
    degreesPerUs: 0.09,
  },
  controller: {
    kind: 'controller',
    name: 'controller',
    railSettingV: 6,
    railFloorV: 4,
    throttle: { lowUs: 1000, neutralUs: 1500, highUs: 2000 },
  },
  pack: { kind: 'pack', name: 'pack', cells: 2, chemistry: 'lipo', capacityAh: 5 },
};
const example: Judging = {
  id: 'example',
  evidenceSchema: z.object({ fromS: z.number(), toS: z.number() }),
  analyse: (input) => {
    const stretch = input.evidence as { fromS: number; toS: number };
    const name = { id: 'volts', title: 'Volts', unit: 'V' };
    return [
      measured(name, reading(input, 'packVoltage', stretch), {
        formula: 'mean, "as read"',
        evidence: [{ ...stretch, taps: ['packVoltage'] }],
      }),
    ];
  },
  limits: () => ({ volts: { max: 8, unit: 'V', kind: 'published', source: 'example' } }),
};
function recorded(): RunRecord {
  const samples = new ScanColumns(rig);
  for (let k = 0; k < 60; k++)
    samples.push(
      scanBlock({
        scan: k * 8,
        tick: 4e9 + k * 14976,
        codes: { a: 750 + (k % 3) },
        edges: [700 + k],
        lastEdge: 4e9 + k * 14976,
        edgesA: k,
      }),
    );
  const evidence = { fromS: 0.05, toS: 0.4 };
  const findings = [...example.analyse({ evidence: evidence as never, samples, rig, car })];
  const judged = judgeAll(findings, example.limits(car, rig));
  return {
    format: recordFormat,
    version: recordVersion,
    id: 'r1',
    check: 'example',
    startedAt: '2026-01-01T00:00:00Z',
    ending: { kind: 'done', words: '' },
    software: { tool: '0.1.0', firmware: '0.1.0' },
    car,
    rig,
    clock: samples.clock,
    raw: packColumns(samples.raw),
    marks: [{ atS: 0.1, label: 'here' }],
    events: [],
    evidence,
    findings: findings as RunRecord['findings'],
    judged: judged as RunRecord['judged'],
    verdict: overallVerdict(judged),
  };
}
describe('a run record', () => {
  it('comes back from its text with every raw count, gap-free and with endless degrees of freedom', () => {
    const record = recorded();
    const back = readRecord(writeRecord(record));
    expect(back).toEqual(record);
    expect(packColumns(samplesOf(back).raw)).toEqual(record.raw);
    expect(Array.from(samplesOf(back).edges(0, 1)).length).toBe(60);
  });
  it('gives the same figures and verdict again from the text alone', () => {
    const record = recorded();
    const again = recompute(readRecord(writeRecord(record)), example);
    expect(again.findings).toEqual(record.findings);
    expect(again).toMatchObject({ verdict: 'pass', judged: record.judged });
  });
  it('gives another verdict when a raw count was changed', () => {
    const record = recorded();
    const bytes = atob(record.raw.columns.samples);
    const raised = Array.from(bytes, (c, i) => (i % 10 === 1 ? String.fromCharCode(7) : c)).join('');
    const changed = {
      ...record,
      raw: { ...record.raw, columns: { ...record.raw.columns, samples: btoa(raised) } },
    };
    expect(recompute(changed, example).verdict).not.toBe('pass');
  });
  it('is not judged by another check', () =>
    expect(() => recompute(recorded(), { ...example, id: 'other' })).toThrow(
      /is of "example", not of "other"/,
    ));
  it('refuses evidence of another shape', () =>
    expect(() => recompute({ ...recorded(), evidence: { fromS: 'early' } }, example)).toThrow(
      /evidence does not fit/,
    ));
});
describe('readRecord', () => {
  const text = writeRecord(recorded());
  const changed = (change: object) => JSON.stringify({ ...JSON.parse(text), ...change });
  it.each([
    ['an empty file', '', /empty/],
    ['a cut file', text.slice(0, 500), /not whole JSON/],
    ['other JSON', '{"a":1}', /not a run record/],
    ['a list', '[]', /not a run record/],
    ['a newer version', changed({ version: recordVersion + 1 }), /Update the program/],
    ['no version', changed({ version: 'one' }), /tells no version/],
    ['a damaged part', changed({ verdict: 'great' }), /damaged: verdict/],
    [
      'a limit without source',
      changed({
        judged: [{ id: 'volts', verdict: 'pass', limit: { unit: 'V', kind: 'published', source: '' } }],
      }),
      /needs its source/,
    ],
    ['a short column', changed({ raw: { ...JSON.parse(text).raw, blocks: 61 } }), /column ".*" holds/],
    ['a missing column', changed({ raw: { blocks: 60, columns: {} } }), /column "edgesOfBlock" is missing/],
  ])('says what is wrong with %s', (_what, broken, words) => {
    expect(() => readRecord(broken)).toThrow(RecordError);
    expect(() => readRecord(broken)).toThrow(words);
  });
});
describe('tables', () => {
  it('quotes after RFC 4180 and has one line a result', () => {
    const lines = resultsCsv(recorded()).trimEnd().split('\r\n');
    expect(lines).toHaveLength(2);
    expect(lines[1]).toMatch(/^example,volts,7\.3\d+,V,/);
    const odd = recorded();
    odd.findings = [{ measured: false, id: 'volts', title: 'Volts', unit: 'V', reason: 'a "gap", here' }];
    expect(resultsCsv(odd)).toContain('"a ""gap"", here"');
  });
  it('has one line a value', () => {
    const lines = samplesCsv(recorded()).trimEnd().split('\r\n');
    expect(lines[1]).toMatch(/^0\.000168,packVoltage,7\.3/);
    // Four fast taps 480 values each, controllerVoltage and packCurrentWide not scanned, four thermistors 60 each.
    expect(lines).toHaveLength(1 + 4 * 480 + 4 * 60);
  });
});
