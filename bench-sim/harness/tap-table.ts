// SPDX-License-Identifier: MIT
// `node --import tsx bench-sim/harness/tap-table.ts [SEEDS] [FIRST]`: U (half-width of the 95 % interval) of one reading
// of each tap at values it is mostly read at: as the rig declares it, and calibrated, median over the rigs of the
// seeds that adopt the calibration. Noise is left out, currents are read after a zero trim.
import { readFileSync } from 'node:fs';
import { medianSorted } from 'simple-statistics';
import { tapBudget, tapU } from '#core/calibration/adoption';
import { typicalValues } from '#core/calibration/typical-values';
import { descriptorSchema, type RigDescription, type Tap } from '#core/samples/rig-description';
import { seedOf } from './command-arguments.ts';
import { table } from './run-table.ts';
import { solvedCalibration } from './solved-calibration.ts';

const [seeds, first] = [seedOf(process.argv[2] ?? '5'), seedOf(process.argv[3] ?? '1')];
const file = new URL('../../firmware-protocol/firmware/descriptor.json', import.meta.url);
const plain: RigDescription = {
  descriptor: descriptorSchema.parse(JSON.parse(readFileSync(file, 'utf8'))),
  store: null,
};
/** Beside its typical values: a motor's can after a run. */
const hotC = 100;

function rowsOf(tap: Tap, rigs: readonly RigDescription[]): string[][] {
  const adopted = rigs.filter(({ store }) => store?.calibration.some((line) => line.tap === tap.id));
  const values = tap.quantity === 'temperature' ? [...typicalValues(tap), hotC] : typicalValues(tap);
  return values.map((at) => {
    const calibrated = adopted.map((rig) => tapU(rig, tap, at)).toSorted((a, b) => a - b);
    const told = (u: number) =>
      tap.quantity === 'temperature' ? `${u.toFixed(2)} K` : `${((100 * u) / at).toFixed(2)} %`;
    return [
      tap.id,
      `${at} ${tap.unit}`,
      told(tapU(plain, tap, at)),
      largest(plain, tap, at),
      adopted.length === 0 ? '-' : told(medianSorted(calibrated)),
      adopted.length === 0 ? '-' : largest(adopted[0], tap, at),
      `${adopted.length}/${rigs.length}`,
    ];
  });
}
function largest(rig: RigDescription, tap: Tap, at: number): string {
  const lines = tapBudget(rig, tap, at);
  const variance = lines.reduce((sum, { u }) => sum + u ** 2, 0);
  return `${lines[0].source} (${((100 * lines[0].u ** 2) / variance).toFixed(0)} % of u2)`;
}
const heads = ['tap', 'at', 'U as declared', 'largest line', 'U calibrated', 'largest line', 'adopted by'];
const rigs = Array.from({ length: seeds }, (_, k) => solvedCalibration(plain, first + k));
const rows = plain.descriptor.taps.flatMap((tap) => rowsOf(tap, rigs));
process.stdout.write(`Seeds ${first} to ${first + seeds - 1}\n${table([heads, ...rows]).join('\n')}\n`);
