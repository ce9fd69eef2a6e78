// SPDX-License-Identifier: MIT
// The virtual rig as a Web Worker: the entry that joins the service to the worker's own messages, its clock and
// the committed firmware. It decides nothing.
import hex from '../firmware-protocol/firmware/bench-marshal.hex?raw';
import { realClock } from './rig-pace.ts';
import { RigService } from './rig-service.ts';

const service = new RigService(
  () => Promise.resolve(hex),
  realClock,
  (message, transfer) => postMessage(message, { transfer }),
);
addEventListener('message', ({ data }: MessageEvent) => void service.take(data));
