// SPDX-License-Identifier: MIT
// The one open file: what is damaged is told by name, what is whole comes back, and other programs find CSV in it.
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { marmotCar } from '../parts/marmot-fixture.ts';
import { newShelf } from '../parts/shelf.ts';
import { readBenchFile, writeBenchFile } from './bench-file.ts';
import { recorded } from './record-fixture.ts';
import { writeRecord } from './record-reader.ts';

const runs = ['r1', 'r2'].map((id) => writeRecord({ ...recorded(), id }));
const shelf = newShelf(marmotCar);
const notes = { r2: 'after new bearings' };
const whole = writeBenchFile({ shelf, runs, notes }, '2026-01-01T00:00:00.000Z');
const changed = (change: (files: Record<string, Uint8Array>) => void) => {
  const files = unzipSync(whole);
  change(files);
  return zipSync(files);
};
const manifest = (content: unknown) =>
  changed((files) => (files['manifest.json'] = strToU8(JSON.stringify(content))));

describe('a bench file is refused', () => {
  it.each([
    ['a text', strToU8('half a file'), /it is no zip\. Choose/],
    ['a torn zip', whole.slice(0, whole.length / 2), /no whole zip: it was cut off/],
    ['an empty file', new Uint8Array(0), /it is no zip/],
    ['another zip', zipSync({ 'a.txt': strToU8('a') }), /no bench file/],
    ['another format', manifest({ format: 'soup', version: 1 }), /no bench file/],
    ['a later version', manifest({ format: 'bench file', version: 2 }), /update this one/],
  ])('when it is %s', (_, bytes, words) => expect(() => readBenchFile(bytes)).toThrow(words));
});
describe('a bench file', () => {
  it('brings everything back', () => {
    const read = readBenchFile(whole);
    expect(read.shelf).toEqual(JSON.parse(JSON.stringify(shelf)));
    expect(read.runs).toEqual(runs);
    expect(read.notes).toEqual(notes);
    expect(read.records.map(({ id }) => id)).toEqual(['r1', 'r2']);
    expect(read.troubles).toEqual([]);
  });
  it('leaves out a file that is not as it was written, and names one that is gone', () => {
    const read = readBenchFile(
      changed((files) => {
        files['runs/1.json'] = strToU8(runs[0].replace('"r1"', '"r9"'));
        delete files['shelf.json'];
      }),
    );
    expect(read.records.map(({ id }) => id)).toEqual(['r2']);
    expect(read.troubles).toEqual([
      'shelf.json: it is missing',
      expect.stringMatching(/^runs\/1.json: .*checksum/),
    ]);
  });
  it('of before checksums: keeps what is whole beside a damaged run and shelf, and names them', () => {
    const read = readBenchFile(
      changed((files) => {
        files['manifest.json'] = strToU8(JSON.stringify({ format: 'bench file', version: 1 }));
        files['runs/1.json'] = strToU8(runs[0].slice(0, 100));
        files['shelf.json'] = strToU8('{"version":9}');
      }),
    );
    expect(read.records.map(({ id }) => id)).toEqual(['r2']);
    expect(read.shelf).toBeNull();
    expect(read.troubles).toEqual([
      expect.stringMatching(/shelf.json: version: this shelf is of another version/),
      expect.stringMatching(/runs\/1.json: .*not whole JSON/),
    ]);
  });
  it('holds one table of all results for other programs', () => {
    const lines = strFromU8(unzipSync(whole)['results.csv']).split('\r\n');
    expect(lines[0]).toMatch(/^started_at,check,result,value,unit/);
    expect(lines.filter((line) => line.includes(',example,volts,'))).toHaveLength(2);
  });
  it('holds no run that is no record', () =>
    expect(() => writeBenchFile({ shelf, runs: ['{}'] }, '2026-01-01T00:00:00.000Z')).toThrow(
      /not a run record/,
    ));
});
