// SPDX-License-Identifier: MIT
// For tests: a whole record made without a rig.
import { z } from 'zod';
import { measured } from '../measurements/finding.ts';
import { reading } from '../measurements/tap-reading.ts';
import { marmotCar } from '../parts/marmot-fixture.ts';
import { scanBlock, testRig } from '../samples/scan-block-fixture.ts';
import { ScanColumns } from '../samples/scan-columns.ts';
import { judgedFindings } from './judged-findings.ts';
import { packColumns } from './packed-columns.ts';
import type { Recomputing } from './recompute.ts';
import { recordFormat, recordVersion, type RunRecord } from './run-record.ts';

const rig = testRig();
/** A check of one voltage. */
export const example: Recomputing = {
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
/** Half a second of a pack at rest. */
export function recorded(): RunRecord {
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
  const { findings, judged, verdict } = judgedFindings(example, { evidence, samples, rig, car: marmotCar });
  return {
    format: recordFormat,
    version: recordVersion,
    id: 'r1',
    check: 'example',
    startedAt: '2026-01-01T00:00:00Z',
    ending: { kind: 'done', words: '' },
    software: { tool: '0.1.0', firmware: '0.1.0' },
    car: marmotCar,
    rig,
    clock: samples.clock,
    raw: packColumns(samples.raw),
    marks: [{ atS: 0.1, label: 'here' }],
    events: [],
    evidence,
    findings: findings as RunRecord['findings'],
    judged: judged as RunRecord['judged'],
    verdict,
  };
}
