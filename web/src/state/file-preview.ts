// SPDX-License-Identifier: MIT
// What a bench file would bring into this logbook, before anything is written: runs that are new, runs that are here
// already, runs that differ from one here of the same name (they join beside it), and what can't be read. Pure.
import type { BenchFileRead } from '#core/record/bench-file';
import type { KnownRun } from '#core/parts/alike-parts';
import { identifiedRun, knownParts, type KnownPart } from '#core/parts/shelf-identity';
import { crc32 } from '#core/record/crc32';
import { isSameRun, plainRun } from '#core/record/record-identity';
import { openRun, type Naming } from './opened-run.ts';
import { isVirtual } from './part-runs.ts';
import type { RunSummary } from './run-summary.ts';

export interface ArrivingRun {
  readonly summary: RunSummary;
  readonly text: string;
}
export interface FilePreview {
  readonly added: readonly ArrivingRun[];
  /** Another run of that name is here: this one joins under a name of its own. */
  readonly beside: readonly ArrivingRun[];
  /** Runs that are here as they are in the file. */
  readonly same: readonly RunSummary[];
  readonly sameDeleted: number;
  /** Those with the parts that they are of, there and here. */
  readonly known: readonly KnownRun[];
  /** Notes of the file to runs that are here and have none, or have another one. */
  readonly notes: readonly { readonly id: string; readonly text: string }[];
  readonly troubles: readonly string[];
}
export interface Here {
  find(id: string): RunSummary | undefined;
  record(id: string): Promise<unknown>;
}
/** `naming`: undefined for a check that this version does not have. */
export type NamingOf = (checkId: string) => Naming | undefined;

export async function previewOf(file: BenchFileRead, here: Here, namingOf: NamingOf): Promise<FilePreview> {
  const added: ArrivingRun[] = [];
  const beside: ArrivingRun[] = [];
  const same: RunSummary[] = [];
  const known: KnownRun[] = [];
  const parts = file.shelf ? knownParts(file.shelf) : [];
  const notes: { id: string; text: string }[] = [];
  const troubles = [...file.troubles];
  for (const [index, record] of file.records.entries()) {
    const naming = namingOf(record.check);
    if (!naming)
      troubles.push(`A run of the check "${record.check}": this version does not have that check.`);
    if (!naming) continue;
    const note = file.notes[record.id];
    const arriving = arrived(file.runs[index], naming, note, parts);
    const [id, other] = await placeFor(arriving, here);
    if (other && id === other.id) {
      same.push(other);
      const { part, partName, partId } = arriving.summary;
      known.push({ theirs: { kind: part, partName, partId }, mine: other.partId });
      const text = joinedNote(other.note, note);
      if (text !== undefined) notes.push({ id, text });
    } else if (id === arriving.summary.id) added.push(arriving);
    else beside.push(renamed(arriving, id));
  }
  const { firsts, others } = byName(added);
  const joining = byName([...beside, ...others]).firsts;
  const sameDeleted = same.filter(({ deletedAt }) => deletedAt !== undefined).length;
  return { added: firsts, beside: joining, same, sameDeleted, known, notes, troubles };
}
/** One file may hold two runs of one name: what differs from the first joins beside it, what is the same does not. */
function byName(runs: readonly ArrivingRun[]) {
  const firsts = new Map<string, ArrivingRun>();
  const others: ArrivingRun[] = [];
  for (const run of runs) {
    const { id } = run.summary;
    const first = firsts.get(id);
    if (!first) firsts.set(id, run);
    else if (!isSameRun(first.text, run.text)) others.push(renamed(run, besideId(id, run.text)));
  }
  return { firsts: [...firsts.values()], others };
}
/** `parts`: of the file's shelf, for runs from before parts had identities. */
function arrived(
  text: string,
  naming: Naming,
  note: string | undefined,
  parts: readonly KnownPart[],
): ArrivingRun {
  const { summary } = openRun(text, naming);
  const of = identifiedRun(summary, parts, isVirtual(summary));
  return { text, summary: note ? { ...of, note } : of };
}
/** The name under which it joins, and the run of that name that is here. */
export async function placeFor(
  { text, summary }: ArrivingRun,
  here: Here,
): Promise<[string, RunSummary | undefined]> {
  const known = here.find(summary.id);
  if (!known) return [summary.id, undefined];
  const kept = await here.record(summary.id);
  if (typeof kept !== 'string') return [summary.id, undefined];
  if (isSameRun(kept, text)) return [summary.id, known];
  const id = besideId(summary.id, text);
  return [id, here.find(id)];
}
const besideId = (id: string, text: string): string =>
  `${id}-${crc32(new TextEncoder().encode(plainRun(text)))
    .toString(16)
    .padStart(8, '0')}`;

export function renamed({ text, summary }: ArrivingRun, id: string): ArrivingRun {
  const record = JSON.parse(text) as object;
  return { text: JSON.stringify({ ...record, id }), summary: { ...summary, id } };
}
/** Both notes where they differ; undefined where nothing changes. */
function joinedNote(mine: string | undefined, theirs: string | undefined): string | undefined {
  if (!theirs || mine?.includes(theirs)) return undefined;
  return mine ? `${mine}\n${theirs}` : theirs;
}
