// SPDX-License-Identifier: MIT
// `node --import tsx bench-sim/harness/same-calibration.ts [SEEDS]`: calibrates rigs on the emulated firmware and without
// it, and tells line by line how far the two lie apart, in U of the line, at the tap's greatest typical value, and the
// ratio of their U. Exit 1 if they adopt differently, or lie apart by more than a quarter of U, or differ by more than
// 5 % in it.
import { typicalValues } from '#core/calibration/typical-values';
import { limitedFeedId } from '#core/calibration/limited-feed';
import type { CalibrationLine } from '#core/calibration/line-calibration';
import type { RigDescription } from '#core/samples/rig-description';
import { openVirtual } from './bench-place.ts';
import { seedOf } from './command-arguments.ts';
import { solvedCalibration } from './solved-calibration.ts';
import { calibrateVirtual } from './virtual-calibration.ts';

const mostApart = 0.25;
const mostWider = 1.05;
async function compare(seed: number): Promise<boolean> {
  const { store } = await calibrateVirtual(seed);
  const { session } = await openVirtual(seed, {}, { store });
  const { rig } = session;
  await session.close();
  const startMs = performance.now();
  const solved = linesOf(solvedCalibration(rig, seed));
  const tookS = (performance.now() - startMs) / 1000;
  const emulated = linesOf(rig);
  const adopted = (lines: readonly CalibrationLine[]) =>
    lines
      .map(({ tap }) => tap)
      .toSorted()
      .join(', ');
  tell(`seed ${seed}, solved in ${tookS.toFixed(1)} s`);
  if (adopted(emulated) !== adopted(solved)) {
    tell(`  adopted on the firmware: ${adopted(emulated)}; solved: ${adopted(solved)}`);
    return false;
  }
  return emulated.map((line) => near(rig, line, solved)).every(Boolean);
}
const linesOf = ({ store }: RigDescription): CalibrationLine[] =>
  (store?.calibration ?? []).filter(({ tap }) => tap !== limitedFeedId);

function near(
  { descriptor }: RigDescription,
  line: CalibrationLine,
  among: readonly CalibrationLine[],
): boolean {
  const tap = descriptor.taps.find(({ id }) => id === line.tap);
  const other = among.find((known) => known.tap === line.tap);
  if (!tap || !other) return false;
  const at = Math.max(...typicalValues(tap));
  const apart = ((line.gain - other.gain) * at + line.offset - other.offset) / valueU(line, at);
  const wider = valueU(other, at) / valueU(line, at);
  tell(
    `  ${line.tap} at ${at} ${tap.unit}: ${apart.toFixed(2)} U apart, U solved / emulated ${wider.toFixed(3)}`,
  );
  return Math.abs(apart) <= mostApart && Math.max(wider, 1 / wider) <= mostWider;
}
/** U of the line alone at a value. */
const valueU = ({ gainU, offsetU, correlation }: CalibrationLine, at: number): number =>
  Math.sqrt((gainU * at) ** 2 + 2 * correlation * gainU * at * offsetU + offsetU ** 2);
const tell = (words: string): void => void process.stdout.write(`${words}\n`);

const seeds = seedOf(process.argv[2] ?? '5');
let same = true;
for (let seed = 1; seed <= seeds; seed++) same = (await compare(seed)) && same;
process.exitCode = same ? 0 : 1;
