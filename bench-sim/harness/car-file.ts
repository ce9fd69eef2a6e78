// SPDX-License-Identifier: MIT
// A car from a file, with clear words for what is impossible in it. It knows JSON and the schema of parts; a field
// the schema does not know is refused, as a misspelt rating would otherwise be taken as not given.
import { carSchema, type Car } from '#core/parts/part';
import { overrideTroubles } from '#checks/override-troubles';
import type { RigDescription } from '#core/samples/rig-description';
import { BadUsage } from './bad-usage.ts';
import { readJsonFile } from './json-file.ts';

const mostTold = 5;
const advice = 'Put it right in the file and run again; demo-data/marmot.json is an example.';

/** Throws BadUsage. */
export function readCar(path: string): Car {
  const content = readJsonFile(path, { what: 'car', flag: '--car', code: 'badCar', advice });
  const parsed = carSchema.safeParse(content);
  const wrong = parsed.success
    ? unknownFields(content, parsed.data)
    : parsed.error.issues.map(({ path: at, message }) => `${at.join('.') || 'the whole'}: ${plain(message)}`);
  if (parsed.success && wrong.length === 0) return parsed.data;
  throw new BadUsage('badCar', told(path, wrong));
}
/** Limits and baselines that no check has, or whose unit looks wrong: told once the rig is known, before anything runs.
 *  Throws BadUsage. */
export function requireSoundLimits(path: string, car: Car, rig: RigDescription): void {
  const troubles = overrideTroubles(car, rig);
  if (troubles.length > 0) throw new BadUsage('badCar', told(path, troubles));
}
function told(path: string, wrong: readonly string[]): string {
  const lines = wrong.slice(0, mostTold).map((words) => `  ${words}`);
  const more = wrong.length > mostTold ? [`  and ${wrong.length - mostTold} more`] : [];
  return [`The car in ${path} can't be used:`, ...lines, ...more, advice].join('\n');
}
/** The schema library's own words, where the schema gives none. */
const plain = (message: string): string =>
  message.endsWith('received undefined') ? 'is missing' : message.replace(/^Invalid input: /, '');

function unknownFields(given: unknown, known: unknown, at = ''): string[] {
  if (typeof given !== 'object' || given === null || typeof known !== 'object' || known === null) return [];
  return Object.entries(given).flatMap(([name, value]) =>
    name in known
      ? unknownFields(value, (known as Record<string, unknown>)[name], `${at}${name}.`)
      : [`${at}${name}: there is no such field`],
  );
}
