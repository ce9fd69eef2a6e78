// SPDX-License-Identifier: MIT
// What a computer has to do with a run once its bytes are there: take them in, analyse them, open the kept record.
// Each is held against the time the run itself took. The run is a real one, on the virtual rig.
import { encodeFrame } from '#protocol/frame';
import { FrameDecoder } from '#protocol/frame-decoder';
import { encodeMessage, isMessageFault, parseMessage, type Message } from '#protocol/messages';
import { wire } from '#protocol/codes';
import { unpackColumns } from '#core/record/packed-columns';
import { readRecord, samplesOf, writeRecord } from '#core/record/record-reader';
import { recompute } from '#core/record/recompute';
import type { RunRecord } from '#core/record/run-record';
import { ScanColumns } from '#core/samples/scan-columns';
import { runCheck } from '#session/check-runner';
import { openVirtual } from './bench-place.ts';
import type { Benchmark } from './benchmark.ts';
import { findCheck } from './check-catalog.ts';
import { cpuSeconds } from './cpu-time.ts';
import { perfSeed } from './perf-plant.ts';

const ticksPerS = 2e6;
const blocksPerS = ticksPerS / (wire.scanTicks * wire.scansPerBlock);

export async function recordBenchmarks(checkId: string): Promise<Benchmark[]> {
  const record = await ranOnce(checkId);
  const text = writeRecord(record);
  const runS = samplesOf(record).latestS;
  const againstRun = (id: string, title: string, of: string, work: () => unknown): Benchmark => ({
    id,
    title,
    of,
    against: 'length of the run',
    ratio: async () => (await cpuSeconds(work)) / runS,
  });
  return [
    decoding(record),
    againstRun(
      `analysis-${checkId}`,
      `Analysis of ${checkId}, from raw counts to verdicts`,
      'processor time of the analysis',
      () => recompute(record, findCheck(checkId)),
    ),
    againstRun('record-opening', 'Opening a kept record: text to samples', 'processor time of reading', () =>
      samplesOf(readRecord(text)),
    ),
  ];
}
async function ranOnce(checkId: string): Promise<RunRecord> {
  const { session, car, hands } = await openVirtual(perfSeed);
  const label = { id: 'perf', startedAt: new Date().toISOString(), tool: 'perf' };
  const { record } = await runCheck(session, findCheck(checkId), { car, label, ask: hands });
  await session.close();
  if (record.ending.kind !== 'done') throw new Error(`The run to be timed broke off: ${record.ending.words}`);
  return record;
}
/** Frames of every block of the run, taken in as a session does. */
function decoding(record: RunRecord): Benchmark {
  const blocks = [...unpackColumns(record.raw)];
  const bytes = joined(blocks.map((block) => framed({ type: 'scanBlock', ...block } as Message)));
  return {
    id: 'decoding',
    title: 'Scan blocks from bytes to samples',
    of: 'blocks taken in per second of processor time',
    against: 'blocks per second on the wire',
    ratio: async () => {
      let taken = 0;
      const cpuS = await cpuSeconds(() => (taken = takeIn(bytes, record)));
      if (taken !== blocks.length) throw new Error(`${taken} of ${blocks.length} blocks came through.`);
      return taken / cpuS / blocksPerS;
    },
  };
}
const framed = (message: Message): Uint8Array => encodeFrame(encodeMessage(message));

function takeIn(bytes: Uint8Array, { rig }: RunRecord): number {
  const decoder = new FrameDecoder();
  const samples = new ScanColumns(rig);
  for (const result of decoder.push(bytes)) {
    if (result.kind !== 'frame') continue;
    const message = parseMessage(result.payload);
    if (!isMessageFault(message) && message.type === 'scanBlock') samples.push(message);
  }
  return samples.raw.length;
}
function joined(parts: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}
