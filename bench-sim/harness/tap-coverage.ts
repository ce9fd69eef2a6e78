// SPDX-License-Identifier: MIT
// `node --import tsx bench-sim/harness/tap-coverage.ts [SEEDS] [FIRST]`: how often one reading of a tap holds the true
// value, on rigs as declared and on the same rigs calibrated with the usual meter; values are held at the taps, so no
// car is solved and many rigs are quick. Exit code 1 when a criterion of studies is not met.
import { readFileSync } from 'node:fs';
import { measured } from '#core/measurements/finding';
import { reading, trimmedReading, zeroOf, type Bench, type Stretch } from '#core/measurements/tap-reading';
import { descriptorSchema, type RigDescription } from '#core/samples/rig-description';
import { HeldPlant } from '#sim/replay/held-plant';
import { PlantStream } from '#sim/replay/plant-stream';
import { seededRandom } from '#sim/seeded-random';
import { drawRigErrors } from '#sim/wiring/rig-errors';
import { seedOf } from './command-arguments.ts';
import { exitCode } from './exit-code.ts';
import { solvedCalibration } from './solved-calibration.ts';
import { allMet } from './study-criteria.ts';
import { summaryOf } from './study-report.ts';
import { cellResult, type CellOutcome, type CellResult } from './study-run.ts';
import { textOf } from './study-text.ts';

const [seeds, first] = [seedOf(process.argv[2] ?? '100'), seedOf(process.argv[3] ?? '1')];
const file = new URL('../../firmware-protocol/firmware/descriptor.json', import.meta.url);
const plain: RigDescription = {
  descriptor: descriptorSchema.parse(JSON.parse(readFileSync(file, 'utf8'))),
  store: null,
};
const [settleS, readS, zeroS] = [0.1, 0.5, 1.7];
const volts = ['packVoltage', 'controllerVoltage', 'railVoltage', 'packCurrentWide'] as const;
const amps = ['packCurrentNarrow', 'packCurrentWide', 'railVoltage', 'railCurrent'] as const;
interface Step {
  readonly held: Partial<HeldPlant['held']>;
  /** Tap and the true value it is read at. */
  readonly at: readonly (readonly [tap: string, truth: number])[];
}
const voltSteps: readonly Step[] = [
  {
    held: { packV: 7.6, controllerV: 7.6, railV: 7.4 },
    at: [
      ['packVoltage', 7.6],
      ['controllerVoltage', 7.6],
      ['railVoltage', 7.4],
    ],
  },
  { held: { railV: 6 }, at: [['railVoltage', 6]] },
];
const ampStep = (packA: number, railA: number): Step => ({
  held: { packA, railA },
  at: [
    ['packCurrentNarrow', packA],
    ['railCurrent', railA],
  ],
});
const ampSteps: readonly Step[] = [
  ampStep(2, 0.2),
  ampStep(4, 2),
  ampStep(8, 5),
  { held: { packA: 20, railA: 0 }, at: [['packCurrentWide', 20]] },
];
interface Taken extends Step {
  readonly stretch: Stretch;
}
function streamOf(seed: number): { stream: PlantStream; taken: readonly Taken[] } {
  const random = seededRandom(seed, 'rig');
  const plant = new HeldPlant();
  const errors = drawRigErrors(random.stream('rig'));
  const stream = new PlantStream(plant, plain, errors, random.stream('converter noise'));
  const take = (step: Step): Taken => {
    Object.assign(plant.held, step.held);
    stream.run(settleS);
    return { ...step, stretch: stream.run(readS) };
  };
  stream.scan(volts);
  const voltages = voltSteps.map(take);
  stream.scan(amps);
  const currents = ampSteps.map(take);
  // The zero stands at the end, where the reading of zeros looks for it while no feed was ever on.
  Object.assign(plant.held, { packA: 0, railA: 0 });
  stream.run(settleS + zeroS);
  return { stream, taken: [...voltages, ...currents] };
}
function resultAt(bench: Bench, tap: string, truth: number, stretch: Stretch): CellResult {
  const { unit, quantity } = plain.descriptor.taps.find(({ id }) => id === tap) ?? { unit: '', quantity: '' };
  const value =
    quantity === 'current'
      ? trimmedReading(bench, tap, stretch, zeroOf(bench, tap))
      : reading(bench, tap, stretch);
  const name = { id: `${tap} at ${truth} ${unit}`, title: tap, unit };
  return cellResult(measured(name, value, { formula: '', evidence: [] }), truth, 'pass');
}
function outcomesOf(seed: number): CellOutcome[] {
  const startMs = performance.now();
  const { stream, taken } = streamOf(seed);
  return [plain, solvedCalibration(plain, seed, new HeldPlant())].map((rig) => {
    const bench = { rig, samples: stream.seenBy(rig) };
    const results = taken.flatMap(({ at, stretch }) =>
      at.map(([tap, truth]) => resultAt(bench, tap, truth, stretch)),
    );
    const took = { rigS: bench.samples.latestS, wallS: (performance.now() - startMs) / 2000 };
    const cell = { check: 'taps', seed, faults: {}, calibrated: rig !== plain };
    return { ...cell, verdict: 'pass', ending: 'done', reason: '', results, ...took };
  });
}
const date = new Date().toISOString();
const outcomes = Array.from({ length: seeds }, (_, k) => outcomesOf(first + k)).flat();
const summary = summaryOf({ dates: [date, date], solved: true, outcomes });
process.stdout.write(`${textOf(summary)}\n`);
process.exitCode = summary.rigs.every(({ criteria }) => allMet(criteria)) ? exitCode.pass : exitCode.fail;
