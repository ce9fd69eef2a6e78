// SPDX-License-Identifier: MIT
// The worker's entry: joins the desk to the browser's ports, clocks and chance. Everything it is told is checked.
import { wire } from '#protocol/codes';
import type { VirtualTruth } from '#core/record/virtual-truth';
import { PortLink } from '#sim/port-link';
import { RigTimers } from '#sim/rig-timers';
import { journalStore } from '../adapters/journal-store.ts';
import { WebSerialLink } from '../adapters/web-serial-link.ts';
import { BenchDesk } from './bench-desk.ts';
import { toBenchSchema, type FromBench, type ToBench } from './messages.ts';
import { wallClock } from './wall-clock.ts';

const tell = (message: FromBench): void => postMessage(message);
const randomWord = () => crypto.getRandomValues(new Uint32Array(1))[0];
const today = () => new Date().toISOString().slice(0, 10);
const journal = journalStore();
const desk = new BenchDesk({ tell, now: () => performance.now(), randomWord, today, journal });

/** Waits on the virtual rig's time, so that a busy computer only makes it slower. */
function openVirtual(port: MessagePort): void {
  const link = new PortLink(port);
  const timers = new RigTimers(
    () => link.nowMs,
    () => {},
  );
  link.onTime((nowMs) => timers.fire(nowMs));
  void desk.open(link, timers, { kind: 'virtual', truth: () => truthOrNone(link) });
}
/** A virtual rig that was closed meanwhile never answers: the record is kept without its truth then. */
function truthOrNone(link: PortLink): Promise<VirtualTruth | null> {
  return Promise.race([link.truth(), new Promise<null>((none) => wallClock.after(2000, () => none(null)))]);
}
async function openSerial({ vendor, product }: Extract<ToBench, { kind: 'openSerial' }>): Promise<void> {
  await desk.open(new WebSerialLink(navigator.serial, { vendor, product }, wire.baud), wallClock, {
    kind: 'serial',
  });
}
onmessage = ({ data, ports }: MessageEvent) => {
  const read = toBenchSchema.safeParse(data);
  if (!read.success) {
    const words = `The page sent something unreadable: ${read.error.issues[0].message}. Reload it.`;
    return tell({ kind: 'trouble', words, during: 'open' });
  }
  const message = read.data;
  if (message.kind === 'openVirtual') openVirtual(ports[0]);
  else if (message.kind === 'openSerial') void openSerial(message);
  else desk.take(message);
};
