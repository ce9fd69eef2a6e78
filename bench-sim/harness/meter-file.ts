// SPDX-License-Identifier: MIT
// A meter's specification from a file, with clear words for what is impossible in it. It knows JSON and the schema.
import { meterSchema, type Meter } from '#core/calibration/meter';
import { BadUsage } from './bad-usage.ts';
import { readJsonFile } from './json-file.ts';

const advice = 'Put it right in the file and run again; web/src/core/calibration/README.md shows one.';

/** Throws BadUsage. */
export function readMeterFile(path: string): Meter {
  const parsed = meterSchema.safeParse(
    readJsonFile(path, { what: 'meter', flag: '--meter', code: 'badMeter', advice }),
  );
  if (parsed.success) return parsed.data;
  const wrong = parsed.error.issues.map(
    ({ path: at, message }) => `  ${at.join('.') || 'the whole'}: ${message.replace(/^Invalid input: /, '')}`,
  );
  throw new BadUsage('badMeter', [`The meter in ${path} can't be used:`, ...wrong, advice].join('\n'));
}
