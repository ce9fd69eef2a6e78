// SPDX-License-Identifier: MIT
// Counts beats: a live virtual rig that streams all the while gets so many of them, as fast as the protocol allows
// (80 frames a second), and must answer each. Ends with 1 if one answer is missing or anything got lost.
// `node --import tsx bench-sim/harness/beats.ts [beats] [seed]`; 10,000 beats are 125 s of rig time.
import { FrameDecoder } from '#protocol/frame-decoder';
import { encodeFrame } from '#protocol/frame';
import { encodeMessage, parseMessage, type Message } from '#protocol/messages';
import { drawCar } from '#sim/physics/population';
import { createVirtualRig } from '#sim/virtual-rig';
import { exitCode } from './exit-code.ts';
import { firmwareHex } from './firmware-file.ts';

const beatEveryMs = 1000 / 80;
const bootMs = 150;
/** Long enough for the person at the bench to see the light and press the stop. */
const stopPressedMs = 2000;
const [beats = 10_000, seed = 1] = process.argv.slice(2).map(Number);

const rig = createVirtualRig({ hex: firmwareHex(), plant: drawCar(seed).plant, seed });
const decoder = new FrameDecoder();
const seen = { answered: 0, blocks: 0, gaps: 0, faults: 0, nextScan: -1, counters: '', live: true };
const say = (message: Message): void => rig.send(encodeFrame(encodeMessage(message)));

function take(payload: Uint8Array): void {
  const message = parseMessage(payload);
  if ('fault' in message) seen.faults++;
  else if (message.type === 'beatBack') {
    // Each once and in order: a missing answer stops the count.
    if (message.counter === (seen.answered & 0xffff)) seen.answered++;
    if (message.state !== 1) seen.live = false;
  } else if (message.type === 'scanBlock') {
    if (seen.nextScan >= 0 && message.scan !== seen.nextScan) seen.gaps++;
    seen.nextScan = message.scan + 8;
    seen.blocks++;
  } else if (message.type === 'counters') seen.counters = JSON.stringify(message);
}
rig.onByte((byte) => {
  for (const result of decoder.push(Uint8Array.of(byte))) {
    if (result.kind === 'frame') take(result.payload);
    else seen.faults++;
  }
});

rig.runForMs(bootMs);
say({ type: 'stream', id: 1, on: 1 });
rig.runForMs(stopPressedMs);
say({ type: 'goLive', id: 2, session: seed });
rig.runForMs(beatEveryMs);
const startMs = rig.nowS * 1e3;
for (let beat = 0; beat < beats; beat++) {
  say({ type: 'beat', session: seed, counter: beat & 0xffff, lastScan: Math.max(seen.nextScan, 0) });
  rig.runForMs(startMs + (beat + 1) * beatEveryMs - rig.nowS * 1e3);
}
say({ type: 'readCounters', id: 3 });
rig.runForMs(100);

console.log(
  `${beats} beats in ${((rig.nowS * 1e3 - startMs) / 1e3).toFixed(1)} s of rig time, ${seen.answered} answered`,
);
console.log(
  `${seen.blocks} blocks, ${seen.gaps} gaps, ${seen.faults} damaged frames, live throughout: ${seen.live}`,
);
console.log(seen.counters);
const good = seen.answered === beats && seen.gaps === 0 && seen.faults === 0 && seen.live;
process.exitCode = good ? exitCode.pass : exitCode.fail;
