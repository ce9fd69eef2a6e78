// SPDX-License-Identifier: MIT
// One cell of a study without the processor: the check ran once on the emulated firmware for a template; other
// seeds solve their plant at that run's conversion instants. bench-sim/replay/README.md says what that leaves out.
import type { Check } from '#checks/check';
import { runCheck } from '#session/check-runner';
import { reportOf } from '#session/run-report';
import type { Car } from '#core/parts/part';
import { unpackColumns } from '#core/record/packed-columns';
import type { RunRecord } from '#core/record/run-record';
import { drawCar } from '#sim/physics/population';
import { BenchLog } from '#sim/replay/bench-log';
import { type PulseMap, replayPlant } from '#sim/replay/plant-replay';
import { replayedBlocks, replayedEvidence, replayedSamples } from '#sim/replay/replayed-run';
import { templateOf, type RunTemplate } from '#sim/replay/run-template';
import { seededRandom } from '#sim/seeded-random';
import { openVirtual } from './bench-place.ts';
import { solvedCalibration } from './solved-calibration.ts';
import { outcomeOf, type Cell, type CellOutcome, type StudyWay } from './study-run.ts';

export interface CheckTemplate {
  readonly run: RunTemplate;
  readonly record: RunRecord;
  readonly trueHz: number;
}
/** Centre of every servo, as the checks command it. */
const centreUs = 1500;

export async function makeTemplate(check: Check, seed: number): Promise<CheckTemplate> {
  const log = new BenchLog();
  const { session, car, hands, virtual } = await openVirtual(seed, {}, { watcher: log });
  const label = { id: 'template', startedAt: new Date().toISOString(), tool: 'study' };
  const { record, stopped } = await runCheck(session, check, { car, label, ask: hands });
  if (stopped) throw new Error(`The template of ${check.id} broke off: ${stopped.message}`);
  await session.close();
  const run = templateOf(log, [...unpackColumns(record.raw)]);
  return { run, record, trueHz: virtual.trueHz };
}
/** The plant is solved once, whatever rigs its codes are read with. */
export function replayCell(
  check: Check,
  cell: Cell,
  template: CheckTemplate,
  { calibrated }: StudyWay,
): CellOutcome[] {
  const startMs = performance.now();
  const { run, record, trueHz } = template;
  const { plant, car } = drawCar(cell.seed, cell.faults);
  const solved = replayPlant(run.log, plant, seededRandom(cell.seed, 'rig'), pulseMap(record.car, car));
  const blocks = replayedBlocks(run, solved);
  const evidence = replayedEvidence(run, solved.codes, record.evidence);
  const label = { id: `${check.id} ${cell.seed}`, startedAt: record.startedAt, tool: 'study', firmware: '' };
  const plain = { ...record.rig, store: null };
  const rigs = calibrated ? [plain, solvedCalibration(plain, cell.seed)] : [plain];
  return rigs.map((rig) => {
    const samples = replayedSamples(rig, blocks, record.clock, trueHz / solved.trueHz);
    const ran = { check, car, rig, samples, events: [], outcome: { evidence } };
    const took = { rigS: samples.latestS, wallS: (performance.now() - startMs) / 1000 / rigs.length };
    return outcomeOf(reportOf(ran, label), { ...cell, calibrated: rig !== plain }, plant.truth(), took);
  });
}
/** The same degrees and the same share of throttle on another car. */
function pulseMap(from: Car, to: Car): PulseMap {
  const steering = from.servo.degreesPerUs / to.servo.degreesPerUs;
  const [was, is] = [from.controller.throttle, to.controller.throttle];
  const open = (is.highUs - is.neutralUs) / (was.highUs - was.neutralUs);
  return {
    steeringUs: (us) => centreUs + (us - centreUs) * steering,
    throttleUs: (us) => is.neutralUs + (us - was.neutralUs) * open,
  };
}
