// SPDX-License-Identifier: MIT
// A meter's specification from a file, with clear words for what is impossible in it. It knows JSON and the schema.
import { readFileSync } from 'node:fs';
import { meterSchema, type Meter } from '#core/calibration/meter';
import { BadUsage } from './bad-usage.ts';

const advice = 'Put it right in the file and run again; web/src/core/calibration/README.md shows one.';

/** Throws BadUsage. */
export function readMeterFile(path: string): Meter {
  const parsed = meterSchema.safeParse(json(path, text(path)));
  if (parsed.success) return parsed.data;
  const wrong = parsed.error.issues.map(
    ({ path: at, message }) => `  ${at.join('.') || 'the whole'}: ${message.replace(/^Invalid input: /, '')}`,
  );
  throw new BadUsage('badMeter', [`The meter in ${path} can't be used:`, ...wrong, advice].join('\n'));
}
function text(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (cause) {
    const why = (cause as Error).message;
    throw new BadUsage(
      'badFile',
      `The meter file ${path} can't be read: ${why}. Give --meter the name of a file.`,
      {
        cause,
      },
    );
  }
}
function json(path: string, content: string): unknown {
  try {
    return JSON.parse(content);
  } catch (cause) {
    const why = (cause as Error).message;
    throw new BadUsage('badMeter', `The meter file ${path} is not JSON: ${why}. ${advice}`, { cause });
  }
}
