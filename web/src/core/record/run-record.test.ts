// SPDX-License-Identifier: MIT
import { describe, expect, it } from 'vitest';
import type { Meter } from '../calibration/meter.ts';
import { testRig } from '../samples/scan-block-fixture.ts';
import { resultsCsv, samplesCsv } from './csv-writer.ts';
import { judgedFindings } from './judged-findings.ts';
import { packColumns } from './packed-columns.ts';
import { example, recorded } from './record-fixture.ts';
import { readRecord, RecordError, samplesOf, writeRecord } from './record-reader.ts';
import { recompute } from './recompute.ts';
import { recordVersion, rigSerialOf } from './run-record.ts';

const rig = testRig();

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
  it('tells a result of the calibration that is missing behind it, in the run and again from the text', () => {
    const { findings } = recompute(readRecord(writeRecord(recorded())), example);
    expect(findings[0].measured && findings[0].notes).toEqual([
      'Not calibrated: packVoltage. The declared tolerances of the rig count, which are wider.',
    ]);
  });
  it("tells an undecided result what a calibration would bring, worked out with the person's meter", () => {
    const { evidence, car } = recorded();
    const near: typeof example = {
      ...example,
      limits: () => ({ volts: { max: 7.36, unit: 'V', kind: 'published', source: 'example' } }),
    };
    const noteWith = (meter?: Meter) =>
      judgedFindings(near, { evidence, samples: samplesOf(recorded()), rig, car, meter }).judged[0].note;
    expect(noteWith()).toMatch(/Calibrating packVoltage would bring it to about 0\.02\d V/);
    const fine = {
      quantity: 'voltage',
      upTo: 60,
      percentOfReading: 0.02,
      counts: 1,
      resolution: 0.001,
    } as const;
    const brought = (note?: string) => Number(/about ([\d.]+) V/.exec(note ?? '')?.[1]);
    expect(brought(noteWith({ name: 'fine', ranges: [fine] }))).toBeLessThan(0.7 * brought(noteWith()));
  });
  it('says by what number its rig goes: its own, or the seed of a virtual one', () => {
    expect(rigSerialOf(recorded())).toBe('T1');
    expect(rigSerialOf({ rig: { ...rig, serial: 'virtual 7' } })).toBe('virtual 7');
    expect(rigSerialOf({ rig: { ...rig, store: null } })).toBe('');
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
    expect(lines).toHaveLength(1 + 4 * 480 + 6 * 60);
  });
});
