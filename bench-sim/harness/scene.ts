// SPDX-License-Identifier: MIT
// What a person does at the bench of a virtual rig in another program: one line of words over a local socket,
// answered with "done", or "done" and the figure that the person read. It stands in for hands and eyes and never
// touches the rig's protocol.
import { createConnection, createServer, type Server } from 'node:net';
import { rmSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { BadUsage } from './bad-usage.ts';

/** Serves until closed; the socket file is removed first and last. */
export function serveScene(path: string, act: (words: string) => number | void): Server {
  rmSync(path, { force: true });
  const server = createServer((socket) => {
    socket.on('error', () => socket.destroy());
    createInterface({ input: socket }).on('line', (words) => {
      const figure = act(words);
      socket.write(typeof figure === 'number' ? `done ${figure}\n` : 'done\n');
    });
  });
  server.on('close', () => rmSync(path, { force: true }));
  return server.listen(path);
}
/** Resolves when the other side has done it, with the figure it read, if any. Rejects with BadUsage when nobody
 *  serves the socket. */
export function actInScene(path: string, words: string): Promise<number | void> {
  return new Promise((done, failed) => {
    const socket = createConnection(path, () => socket.write(`${words.replaceAll('\n', ' ')}\n`));
    socket.once('data', (answer) => {
      socket.end();
      done(figureIn(answer.toString()));
    });
    socket.once('error', (cause) =>
      failed(
        new BadUsage(
          'badFile',
          `Nobody answers at the scene socket ${path}. Start the virtual rig with the same --scene.`,
          {
            cause,
          },
        ),
      ),
    );
  });
}
/** "done" or "done 4.5"; anything else brings no figure. */
function figureIn(answer: string): number | undefined {
  const figure = /^done (-?\d+(?:\.\d+)?(?:e-?\d+)?)$/.exec(answer.trim())?.[1];
  return figure === undefined ? undefined : Number(figure);
}
