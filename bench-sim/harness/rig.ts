// SPDX-License-Identifier: MIT
// `npm run rig`: the virtual rig on a pseudo-terminal at real time, for any serial client. A person's hands come
// over --scene. Opening the line resets the rig, as it does a board.
import type { Server } from 'node:net';
import { BeatWatch } from '#sim/beat-watch';
import { drawCar } from '#sim/physics/population';
import { Pty } from '#sim/pty';
import { pacedBy, realClock } from '#sim/rig-pace';
import { ServedRig } from '#sim/served-rig';
import { createVirtualRig, type VirtualRig } from '#sim/virtual-rig';
import { BadUsage } from './bad-usage.ts';
import { exitCode } from './exit-code.ts';
import { firmwareHex } from './firmware-file.ts';
import { goBeforeOthers } from './process-priority.ts';
import { parseRigArguments, type RigArguments } from './rig-arguments.ts';
import { serveScene } from './scene.ts';
import { readStoreFile, writeStoreFile } from './store-file.ts';

function makeRig({ seed, faults, store }: RigArguments): VirtualRig {
  const { plant, description } = drawCar(seed, faults);
  const kept = store === null ? undefined : readStoreFile(store);
  console.error(`Virtual rig, seed ${seed}: ${description}`);
  return createVirtualRig({ hex: firmwareHex(), plant, seed, faults, store: kept });
}

function fail(error: unknown): never {
  console.error(error instanceof Error ? error.message : String(error));
  process.exit(error instanceof BadUsage ? exitCode.badUsage : exitCode.noRig);
}

function serve(wanted: RigArguments): void {
  goBeforeOthers();
  const rig = makeRig(wanted);
  const pty: Pty = new Pty(wanted.pty, {
    ready: () => console.log(`ready ${wanted.pty}`),
    opened: () => served.opened(),
    closed: () => served.closed(),
    bytes: (chunk) => served.receive(chunk),
    failed: fail,
  });
  const served = new ServedRig(
    rig,
    pacedBy(realClock, 1),
    (bytes) => pty.write(bytes),
    fail,
    undefined,
    new BeatWatch(realClock.now),
  );
  const scene = wanted.scene === null ? null : serveScene(wanted.scene, (words) => served.person(words));
  endOnSignal(wanted, rig, pty, scene);
}

function endOnSignal(wanted: RigArguments, rig: VirtualRig, pty: Pty, scene: Server | null): void {
  const end = (): void => {
    pty.end();
    scene?.close();
    if (wanted.store !== null) writeStoreFile(wanted.store, rig.exportStore());
    process.exit(0);
  };
  process.once('SIGINT', end);
  process.once('SIGTERM', end);
}

try {
  serve(parseRigArguments(process.argv.slice(2)));
} catch (error) {
  fail(error);
}
