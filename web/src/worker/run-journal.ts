// SPDX-License-Identifier: MIT
// Writes the blocks of a run as they come, twice a second, so that a page that goes away loses at most a second, and
// makes a record of what was written. It judges nothing: a run that was cut off is not measured.
import { z } from 'zod';
import { checkById } from '#checks/index';
import { carSchema } from '#core/parts/part';
import { packColumns, packedSchema, unpackColumns, type PackedColumns } from '#core/record/packed-columns';
import type { RunRecord } from '#core/record/run-record';
import { BlockColumns } from '#core/samples/block-columns';
import { descriptorSchema, storeSchema } from '#core/samples/rig-description';
import { ScanColumns } from '#core/samples/scan-columns';
import type { RigSession } from '#session/rig-session';
import { reportOf } from '#session/run-report';
import { RunStopped } from '#session/run-stopped';
import type { JournalStore } from '../adapters/journal-store.ts';

const everyMs = 500;
const headSchema = z.object({
  runId: z.string(),
  check: z.string(),
  startedAt: z.string(),
  firmware: z.string(),
  car: carSchema,
  rig: z.object({ descriptor: descriptorSchema, store: storeSchema.nullable() }),
});
export type JournalHead = z.infer<typeof headSchema>;
const goneWords =
  'The page went away while the check ran. What was written until then is kept; the rig went to safe by itself. Run the check again.';

export class RunJournal {
  private pending = new BlockColumns();
  private parts = 0;
  private wroteMs = 0;
  private runId: string | null = null;
  private unlisten = () => {};

  /** `now`: the computer's clock, ms. Storage that fails must not stop a run: `lost` is told once. */
  constructor(
    private readonly store: JournalStore,
    private readonly now: () => number,
    private readonly lost: (words: string) => void,
  ) {}
  begin(session: RigSession, head: Omit<JournalHead, 'rig' | 'firmware'>): void {
    const { descriptor, store } = session.rig;
    this.runId = head.runId;
    this.pending = new BlockColumns();
    this.parts = 0;
    this.wroteMs = this.now();
    this.unlisten = session.blocks.add((block) => this.pending.push(block));
    const whole: JournalHead = { ...head, firmware: session.firmware, rig: { descriptor, store } };
    this.keep(this.store.begin(whole));
  }
  /** Called often; writes when half a second has gone by. */
  pass(): void {
    if (this.runId === null || this.now() - this.wroteMs < everyMs || this.pending.length === 0) return;
    this.wroteMs = this.now();
    this.keep(this.store.append(this.runId, this.parts++, packColumns(this.pending)));
    this.pending = new BlockColumns();
  }
  /** The record has been made; it is the page's to keep, and the journal stays until it says so. */
  end(): void {
    this.unlisten();
    this.runId = null;
  }
  forget(runId: string): Promise<void> {
    return this.store.remove(runId);
  }
  /** What was written of a run that never ended; null where there is nothing to read. */
  async recover(runId: string): Promise<RunRecord | null> {
    const { head, parts } = await this.store.read(runId);
    const read = headSchema.safeParse(head);
    const check = read.success ? checkById(read.data.check) : undefined;
    if (!read.success || !check) return null;
    const { car, rig, startedAt, firmware } = read.data;
    const samples = new ScanColumns(rig);
    for (const part of wholeParts(parts)) for (const block of unpackColumns(part)) samples.push(block);
    const outcome = new RunStopped('failed', goneWords);
    return reportOf(
      { check, car, rig, samples, events: [], outcome },
      { id: runId, startedAt, tool: 'page', firmware },
    );
  }
  private keep(writing: Promise<void>): void {
    writing.catch((cause: unknown) => {
      this.lost(
        `This browser could not keep the run as it goes (${String(cause)}). Save its record when it ends.`,
      );
      this.end();
    });
  }
}
/** A torn part ends what can be read; the parts before it stand. */
function wholeParts(parts: readonly unknown[]): PackedColumns[] {
  const read = parts.map((part) => packedSchema.safeParse(part));
  const torn = read.findIndex(({ success }) => !success);
  return read.slice(0, torn < 0 ? read.length : torn).flatMap((part) => (part.success ? [part.data] : []));
}
