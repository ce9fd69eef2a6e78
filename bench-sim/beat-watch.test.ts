// SPDX-License-Identifier: MIT
// Rig time against the beats of its host, with a wall clock that only the test moves. Firmware and host in two real
// programs, one of them stopped: tests/port/check-over-terminal.test.ts.
import { describe, expect, it } from 'vitest';
import { stateCode } from '#protocol/codes';
import { encodeFrame } from '#protocol/frame';
import { encodeMessage, type Message } from '#protocol/messages';
import { aheadOfBeatMs, BeatWatch, patienceMs } from './beat-watch.ts';

const frame = (message: Message): Uint8Array => encodeFrame(encodeMessage(message));
const stateMessage = (state: number): Message => {
  const nothing = { trip: 0, tripTap: 255, tripRaw: 0, tripTick: 0, missing: 0, throttleCap: 300 };
  return { type: 'state', id: 0, state, ...nothing };
};
const beat = frame({ type: 'beat', session: 1, counter: 1, lastScan: 0 });

function watched() {
  const wall = { nowMs: 10_000 };
  const watch = new BeatWatch(() => wall.nowMs);
  const live = (rigMs: number) => watch.rigSent(frame(stateMessage(stateCode.live)), rigMs);
  return { wall, watch, live };
}

describe('the watch on beats', () => {
  it('binds a rig only while it is live', () => {
    const { watch, live } = watched();
    watch.hostSent(beat, 50);
    expect(watch.limitMs()).toBe(Number.POSITIVE_INFINITY);
    live(100);
    expect(watch.limitMs()).toBe(100 + aheadOfBeatMs);
    watch.rigSent(frame(stateMessage(stateCode.ending)), 120);
    expect(watch.limitMs()).toBe(Number.POSITIVE_INFINITY);
  });
  it('lets rig time go on with each beat, cut into pieces or not', () => {
    const { watch, live } = watched();
    live(100);
    watch.hostSent(beat, 140);
    expect(watch.limitMs()).toBe(140 + aheadOfBeatMs);
    watch.hostSent(beat.slice(0, 5), 150);
    expect(watch.limitMs()).toBe(140 + aheadOfBeatMs);
    watch.hostSent(beat.slice(5), 155);
    expect(watch.limitMs()).toBe(155 + aheadOfBeatMs);
  });
  it('takes no other message and no damaged one for a beat', () => {
    const { watch, live } = watched();
    live(100);
    watch.hostSent(frame({ type: 'readState', id: 7 }), 150);
    const damaged = beat.slice();
    damaged[6] ^= 4;
    watch.hostSent(damaged, 150);
    expect(watch.limitMs()).toBe(100 + aheadOfBeatMs);
  });
  it('loses its patience with a host that is gone, and finds it again with the next beat', () => {
    const { wall, watch, live } = watched();
    live(100);
    wall.nowMs += patienceMs - 1;
    expect(watch.limitMs()).toBe(100 + aheadOfBeatMs);
    wall.nowMs += 1;
    expect(watch.limitMs()).toBe(Number.POSITIVE_INFINITY);
    watch.hostSent(beat, 190);
    expect(watch.limitMs()).toBe(190 + aheadOfBeatMs);
  });
  it('forgets all with a line opened or closed', () => {
    const { watch, live } = watched();
    live(100);
    watch.restart();
    expect(watch.limitMs()).toBe(Number.POSITIVE_INFINITY);
  });
});
