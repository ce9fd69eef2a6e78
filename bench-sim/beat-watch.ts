// SPDX-License-Identifier: MIT
// How far a virtual rig on somebody's serial line may run ahead of its host: while the rig is live, its time waits
// for the host's next beat, for a second and a half at most. It reads both directions of the line and changes neither.
import { stateCode } from '#protocol/codes';
import { FrameDecoder } from '#protocol/frame-decoder';
import { isMessageFault, type Message, parseMessage } from '#protocol/messages';

/** Less than the silence that trips the rig, more than the lateness of beats that nobody would call busy. */
export const aheadOfBeatMs = 60;
/**
 * By the wall clock. A host that beats no more for so long is gone, and the rig may find that out; before a host
 * that only withholds its beats takes the line for dead, after 2 s without a block.
 */
export const patienceMs = 1500;

export class BeatWatch {
  private live = false;
  private beatRigMs = 0;
  private beatWallMs = 0;
  private fromHost = new FrameDecoder();
  private fromRig = new FrameDecoder();

  constructor(private readonly wallMs: () => number) {}

  /** The line was opened or closed. */
  restart(): void {
    this.live = false;
    this.fromHost.reset();
    this.fromRig.reset();
  }

  /** Bytes on their way to the rig, at its time. */
  hostSent(bytes: Uint8Array, rigMs: number): void {
    for (const { type } of messagesIn(this.fromHost, bytes)) if (type === 'beat') this.beaten(rigMs);
  }

  /** Bytes that left the rig, at its time: they tell whether it waits for beats. */
  rigSent(bytes: Uint8Array, rigMs: number): void {
    for (const message of messagesIn(this.fromRig, bytes)) {
      if (message.type !== 'state' && message.type !== 'scanBlock' && message.type !== 'beatBack') continue;
      const live = message.state === stateCode.live;
      if (live && !this.live) this.beaten(rigMs);
      this.live = live;
    }
  }

  /** Rig time beyond which the rig should not run now. */
  limitMs(): number {
    const waits = this.live && this.wallMs() - this.beatWallMs < patienceMs;
    return waits ? this.beatRigMs + aheadOfBeatMs : Number.POSITIVE_INFINITY;
  }

  private beaten(rigMs: number): void {
    this.beatRigMs = rigMs;
    this.beatWallMs = this.wallMs();
  }
}
function messagesIn(decoder: FrameDecoder, bytes: Uint8Array): Message[] {
  return decoder.push(bytes).flatMap((result) => {
    if (result.kind === 'fault') return [];
    const message = parseMessage(result.payload);
    return isMessageFault(message) ? [] : [message];
  });
}
