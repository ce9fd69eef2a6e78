// SPDX-License-Identifier: MIT
// Measures the virtual rig itself: rig time per second of processor time while it streams all taps, sleep share,
// stack, interrupts. `node --import tsx bench-sim/harness/rig-speed.ts [seconds] [seed]`
import { encodeFrame } from '#protocol/frame';
import { encodeMessage, type Message } from '#protocol/messages';
import { vectors } from '#sim/machine/registers';
import { drawCar } from '#sim/physics/population';
import { createVirtualRig } from '#sim/virtual-rig';
import { firmwareHex } from './firmware-file.ts';

const [seconds = 10, seed = 1] = process.argv.slice(2).map(Number);
const rig = createVirtualRig({ hex: firmwareHex(), plant: drawCar(seed).plant, seed });
const say = (message: Message): void => rig.send(encodeFrame(encodeMessage(message)));

rig.runForMs(150);
say({ type: 'stream', id: 1, on: 1 });
rig.runForMs(2000);
rig.instruments.clear(rig.cycles);
const startS = rig.nowS;
const startUs = process.cpuUsage();
let bytes = 0;
rig.onByte(() => bytes++);
for (let beat = 0; rig.nowS - startS < seconds; beat++) {
  say({ type: 'beat', session: 1, counter: beat & 0xffff, lastScan: 0 });
  rig.runForMs(20);
}
const { user, system } = process.cpuUsage(startUs);
const rigS = rig.nowS - startS;
console.log(`${((rigS * 1e6) / (user + system)).toFixed(2)} s of rig time per second of processor time`);
console.log(
  `${(bytes / rigS).toFixed(0)} bytes/s, asleep ${(100 * rig.instruments.idleShare(rig.cycles)).toFixed(1)} %`,
);
console.log(`${rig.instruments.stackFree} bytes of stack never used`);
for (const [name, vector] of Object.entries(vectors)) {
  const { count, worstLatencyCycles, longestOwnCycles } = rig.instruments.of(vector);
  if (count === 0) continue;
  const rate = (count / rigS).toFixed(0);
  console.log(
    `${name}: ${rate}/s, worst latency ${worstLatencyCycles} cycles, longest run ${longestOwnCycles} cycles`,
  );
}
