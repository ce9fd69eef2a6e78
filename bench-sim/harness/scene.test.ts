// SPDX-License-Identifier: MIT
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { actInScene, serveScene } from './scene.ts';

const socket = join(mkdtempSync(join(tmpdir(), 'scene-')), 's');

it('carries what a person does to the virtual rig of another program', async () => {
  const acts: string[] = [];
  const server = serveScene(socket, (words) => {
    acts.push(words);
    return words.includes('read') ? -4.25 : undefined;
  });
  await actInScene(socket, 'Lay the horn against the block.\nTightly.');
  expect(await actInScene(socket, 'Take the block away.')).toBeUndefined();
  expect(await actInScene(socket, 'Lay the protractor on the horn and read it.')).toBe(-4.25);
  expect(acts.slice(0, 2)).toEqual(['Lay the horn against the block. Tightly.', 'Take the block away.']);
  await new Promise((done) => server.close(done));
  await expect(actInScene(socket, 'x')).rejects.toThrow(/Nobody answers at the scene socket/);
});
