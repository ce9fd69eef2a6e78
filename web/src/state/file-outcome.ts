// SPDX-License-Identifier: MIT
// What a bench file comes to here by a person's answers: which part of it is which of ours, the shelf and the repairs as
// they would be, and each run with the identities that it joins under. Pure but for the new identities handed in.
import { arrivingRepairs, type KeptRepair, type RepairsMerge } from '#core/history/repair';
import type { Car } from '#core/parts/part';
import {
  alikeParts,
  identifiedFile,
  identitiesBy,
  type Alike,
  type AlikeAnswer,
  type FilePart,
  type IdentityOf,
} from '#core/parts/alike-parts';
import {
  arrivingShelf,
  isExample,
  mergedShelf,
  usualChoice,
  type CarChoice,
  type ShelfMerge,
} from '#core/parts/shelf-merge';
import type { ShelfContent } from '#core/parts/shelf';
import { knownParts, type NewId } from '#core/parts/shelf-identity';
import type { BenchFileRead } from '#core/record/bench-file';
import type { FilePreview } from './file-preview.ts';
import type { RunSummary } from './run-summary.ts';

export interface Answers {
  /** By the key of the alike part; null while nobody has said. */
  readonly parts: Readonly<Record<string, AlikeAnswer | null>>;
  /** By the name of the file's car. */
  readonly cars: Readonly<Record<string, CarChoice>>;
}
/** What is here. */
export interface Ours {
  readonly shelf: ShelfContent;
  readonly repairs: readonly KeptRepair[];
  readonly runs: readonly RunSummary[];
  /** Gives way to the file's shelf where it is all there is and no run or repair is of it. */
  readonly example: Car;
}
export interface FileOutcome {
  /** Null where the file holds no shelf. */
  readonly cars: ShelfMerge | null;
  readonly repairs: RepairsMerge;
  readonly joining: (run: RunSummary) => RunSummary;
}
type Held = Pick<BenchFileRead, 'shelf' | 'repairs'>;

const partsHere = (shelf: ShelfContent) => knownParts({ ...shelf, removed: [] });
function givesWay({ shelf, runs, repairs, example }: Ours): boolean {
  const ids = new Set(partsHere(shelf).map(({ partId }) => partId));
  const used = [...runs, ...repairs].some(({ partId }) => partId !== undefined && ids.has(partId));
  return isExample(shelf, example) && !used;
}

/** Parts of the file that are called as one of ours and are not known to be it. */
export function alikesOf({ shelf }: Held, { added, beside }: FilePreview, ours: Ours): Alike[] {
  if (givesWay(ours)) return [];
  const entered = shelf ? partsHere(shelf).filter((part) => !isUnentered(shelf, part)) : [];
  const ofRuns = [...added, ...beside].map(({ summary }) => filePartOf(summary));
  return alikeParts(partsHere(ours.shelf), [...entered, ...ofRuns]);
}
/** A car's own part that nobody entered comes with its runs alone. */
const isUnentered = (
  { cars }: ShelfContent,
  { kind, car }: { kind: FilePart['kind']; car: { name: string } | null },
) => car !== null && cars.find(({ name }) => name === car.name)?.[kind] === undefined;
export const filePartOf = ({ part, partName, partId }: RunSummary): FilePart => ({
  kind: part,
  partName,
  partId,
});

export function outcomeOf(
  file: Held,
  alikes: readonly Alike[],
  answers: Answers,
  ours: Ours,
  newId: NewId,
): FileOutcome {
  const made = new Map<string, string>();
  const fresh = (key: string) => made.get(key) ?? made.set(key, newId('car')).get(key)!;
  const identityOf = identitiesBy(alikes, answers.parts, fresh);
  const shelf = file.shelf && identifiedFile(file.shelf, ours.shelf, identityOf, newId);
  return {
    cars: shelf && mergeOf(shelf, answers, ours),
    repairs: arrivingRepairs(
      ours.repairs,
      file.repairs.map((repair) => mendedPart(repair, alikes, identityOf)),
    ),
    joining: (run) => joiningRun(run, identityOf, shelf?.cars ?? []),
  };
}
function mergeOf(shelf: ShelfContent, { cars }: Answers, ours: Ours): ShelfMerge {
  const choose: typeof usualChoice = (car) => cars[car.theirs.name] ?? usualChoice(car);
  return givesWay(ours)
    ? arrivingShelf(ours.shelf, shelf, ours.example, choose)
    : mergedShelf(ours.shelf, shelf, choose);
}
/** A repair names no kind: only one part may fit. */
function mendedPart(repair: KeptRepair, alikes: readonly Alike[], identityOf: IdentityOf): KeptRepair {
  const { partName, partId } = repair;
  const fitting = alikes.filter(({ name, theirs }) =>
    partId ? theirs === partId : !theirs && name === partName,
  );
  if (fitting.length !== 1) return repair;
  return { ...repair, partId: identityOf({ kind: fitting[0].kind, partName, partId }) };
}
function joiningRun(run: RunSummary, identityOf: IdentityOf, cars: readonly Car[]): RunSummary {
  const partId = identityOf(filePartOf(run));
  const carId = run.carId ?? cars.find(({ name }) => name === run.car)?.id;
  return { ...run, ...(partId !== undefined && { partId }), ...(carId !== undefined && { carId }) };
}
