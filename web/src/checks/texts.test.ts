// SPDX-License-Identifier: MIT
// What a person reads names checks by their titles: no sentence in the code of checks and core holds a check's id.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkTitles } from '#core/titles/check-titles';
import { causes } from '#core/diagnosis/causes';
import { checks } from './index.ts';

const rooms = [import.meta.dirname, join(import.meta.dirname, '../core')];
const files = rooms
  .flatMap((room) => readdirSync(room, { recursive: true, encoding: 'utf8' }).map((name) => join(room, name)))
  .filter((name) => name.endsWith('.ts') && !/\.test\.ts$|-fixture\.ts$/.test(name));
const ids = checks.map(({ id }) => id).filter((id) => id.includes('-'));
const comments = /^\s*(\/\/|\*|\/\*).*$/gm;
/** An id beside a word is in a sentence; as a key it stands between quotes. */
const inWords = (source: string, id: string): boolean =>
  new RegExp(`[\\w,;.] ${id}\\b|\\b${id}[,;.]? \\w`).test(source.replaceAll(comments, ''));

describe('titles of checks', () => {
  it('are those of all checks', () =>
    expect(Object.entries(checkTitles)).toEqual(checks.map(({ id, title }) => [id, title])));
  it('differ', () => expect(new Set(Object.values(checkTitles)).size).toBe(checks.length));
});
describe('sentences name checks by their titles', () => {
  it('in the code', () => {
    const found = files.flatMap((name) => {
      const source = readFileSync(name, 'utf8');
      return ids.filter((id) => inWords(source, id)).map((id) => `${name}: ${id}`);
    });
    expect(found).toEqual([]);
  });
  it('in what to do about a servo that is in order', () =>
    expect(causes.find(({ id }) => id === 'healthy')?.todo).toContain('"Servo: heat at work"'));
});
