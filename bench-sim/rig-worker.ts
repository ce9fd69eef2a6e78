// SPDX-License-Identifier: MIT
// The virtual rig as a Web Worker: built anew from a seed and faults on each `open`, then run at `speed` times
// real time. The message port that comes with `open` carries its line; the worker's own messages carry what a
// person does at the bench. It knows no frames and no page.
import { z } from 'zod';
import type { Faults } from './faults/faults.ts';
import { drawCar } from './physics/population.ts';
import { pacedBy, realClock } from './rig-pace.ts';
import { RigPump } from './rig-pump.ts';
import { createVirtualRig, type VirtualRig } from './virtual-rig.ts';
import hex from '../firmware-protocol/firmware/bench-marshal.hex?raw';

/** Real time times this is the most that is asked for; a busy computer runs slower by itself. */
const fastest = 20;
const toRig = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('open'),
    seed: z.int().min(0).max(0xffffffff),
    faults: z.record(z.string(), z.number().min(0).max(1)),
    speed: z.number().positive().max(fastest),
  }),
  z.object({ kind: z.literal('person'), act: z.string() }),
]);
/** What comes over the line's port: bytes for the rig, or the line being opened or closed. */
const onLine = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('bytes'), bytes: z.instanceof(Uint8Array) }),
  z.object({ kind: z.literal('lineOpen') }),
  z.object({ kind: z.literal('lineClose') }),
]);
let rig: VirtualRig | null = null;
let close: () => void = () => {};

function run(built: VirtualRig, line: MessagePort, speed: number): () => void {
  let open = false;
  let gone = false;
  const pump = new RigPump(built, pacedBy(realClock, speed), {
    bytes: (bytes) => open && line.postMessage({ kind: 'bytes', bytes }),
    sliced: (nowMs) => open && line.postMessage({ kind: 'time', nowMs }),
    nextStopMs: () => Number.POSITIVE_INFINITY,
    goesOn: () => !gone,
    failed: (cause) => line.postMessage({ kind: 'failed', words: String(cause) }),
  });
  line.onmessage = ({ data }) => {
    const message = onLine.parse(data);
    if (message.kind === 'bytes') return built.send(message.bytes);
    open = message.kind === 'lineOpen';
    if (open) built.reset();
  };
  pump.start();
  return () => {
    gone = true;
    line.close();
  };
}
onmessage = ({ data, ports }: MessageEvent) => {
  const message = toRig.parse(data);
  if (message.kind === 'person') return rig?.person(message.act);
  const { seed, speed } = message;
  const faults = message.faults as Faults;
  close();
  const { plant, car } = drawCar(seed, faults);
  rig = createVirtualRig({ hex, plant, seed, faults });
  close = run(rig, ports[0], speed);
  postMessage({ kind: 'car', car });
};
