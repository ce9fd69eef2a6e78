// SPDX-License-Identifier: MIT
// A car from a file, with clear words for what is impossible in it. It knows JSON and the schema of parts.
import { readFileSync } from 'node:fs';
import { carSchema, type Car } from '#core/parts/part';
import { BadUsage } from './bad-usage.ts';

const mostTold = 5;
/** Throws BadUsage. */
export function readCar(path: string): Car {
  const parsed = carSchema.safeParse(json(path, text(path)));
  if (parsed.success) return parsed.data;
  const { issues } = parsed.error;
  const told = issues
    .slice(0, mostTold)
    .map((issue) => `  ${issue.path.join('.') || 'the whole'}: ${issue.message}`);
  const more = issues.length > mostTold ? [`  and ${issues.length - mostTold} more`] : [];
  throw new BadUsage('badCar', [`The car in ${path} can't be used:`, ...told, ...more].join('\n'));
}
function text(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (cause) {
    throw new BadUsage('badFile', `The car file ${path} can't be read: ${(cause as Error).message}.`, {
      cause,
    });
  }
}
function json(path: string, content: string): unknown {
  try {
    return JSON.parse(content);
  } catch (cause) {
    throw new BadUsage('badCar', `The car file ${path} is not JSON: ${(cause as Error).message}.`, { cause });
  }
}
