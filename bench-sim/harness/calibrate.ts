// SPDX-License-Identifier: MIT
// `npm run calibrate`: guides a person with a hand-held meter through the calibration of a rig; on the virtual rig a
// simulated person reads a simulated meter. With --json, standard output is one document.
import { usualMeter } from '#core/calibration/meter';
import type { CalibrationHands } from '#session/calibration/calibration-hands';
import { calibratable, calibrate, type CalibrationReport } from '#session/calibration/calibrate';
import type { Progress } from '#checks/check';
import { BadUsage } from './bad-usage.ts';
import { defaultSeed, openSerial, today, type BenchPlace } from './bench-place.ts';
import { parseCalibrateArguments, type CalibrateArguments } from './calibrate-arguments.ts';
import { personHere } from './calibration-person.ts';
import { exitCode } from './exit-code.ts';
import { readMeterFile } from './meter-file.ts';
import { readStoreFile, writeStoreFile } from './store-file.ts';
import { openCalibration } from './virtual-calibration.ts';
import { jsonText, print, runCommand, stopOnInterrupt, tell } from './terminal.ts';

const words = process.argv.slice(2);
const wantsJson = words.includes('--json');

interface Place extends BenchPlace {
  readonly person: CalibrationHands;
  /** Nobody is asked any more; what the rig keeps is kept. */
  close(): void;
}
async function main(): Promise<number> {
  const wanted = parseCalibrateArguments(words);
  const meter = wanted.meter === null ? usualMeter : readMeterFile(wanted.meter);
  const place = wanted.rig === 'virtual' ? await virtualPlace(wanted, meter) : await serialPlace(wanted);
  const { session, car, person } = place;
  try {
    const taps = tapsWanted(wanted, calibratable(session.rig));
    for (const note of session.notes) tell(note);
    const report = await calibrate(session, {
      taps,
      meter,
      car,
      hands: person,
      today: today(),
      thermistorsIn: wanted.thermistors,
      feedBy: wanted.feed,
      progress: wantsJson ? undefined : tellProgress,
      signal: stopOnInterrupt(),
    });
    if (report.stopped?.cause instanceof BadUsage) throw report.stopped.cause;
    print(wantsJson ? jsonText({ meter: meter.name, ...report }) : textOf(report));
    return exitOf(report);
  } finally {
    await session.close();
    place.close();
  }
}
async function virtualPlace(wanted: CalibrateArguments, meter: typeof usualMeter): Promise<Place> {
  const seed = wanted.seed ?? defaultSeed;
  const store = wanted.store === null ? undefined : readStoreFile(wanted.store);
  const place = await openCalibration(seed, meter, store);
  const close = () => {
    if (wanted.store !== null) writeStoreFile(wanted.store, place.exportStore());
  };
  return { ...place, close };
}
async function serialPlace(wanted: CalibrateArguments): Promise<Place> {
  const place = await openSerial({ ...wanted, scene: null, handsReady: true });
  const person = personHere();
  return { ...place, person, close: () => person.close() };
}
function tapsWanted({ taps }: CalibrateArguments, known: readonly string[]): readonly string[] {
  const unknown = taps.find((id) => !known.includes(id));
  if (unknown !== undefined)
    throw new BadUsage(
      'unknownTap',
      `"${unknown}" can't be calibrated on this rig. What can: ${known.join(', ')}.`,
    );
  return taps.length > 0 ? taps : known;
}
function exitOf({ outcomes, stopped, stored }: CalibrationReport): number {
  if (stopped?.kind === 'link lost') return exitCode.noRig;
  if (stopped?.kind === 'tripped' || stopped?.kind === 'stopped') return exitCode.tripped;
  const open = outcomes.some(({ state }) => state === 'refused' || state === 'not reached');
  const unkept = !stored && outcomes.some(({ state }) => state === 'adopted');
  return open || unkept || stopped ? exitCode.undecided : exitCode.pass;
}
const textOf = ({ outcomes, words: ending }: CalibrationReport): string =>
  `${[...outcomes.map(({ words: told }) => told), ending].join('\n')}\n`;
const tellProgress = ({ words: told, leftS }: Progress): void => tell(`${told} (${Math.ceil(leftS)} s)`);

await runCommand(main, wantsJson);
