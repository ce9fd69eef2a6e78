// SPDX-License-Identifier: MIT
// A rig's memory (description, store) in pieces, put together and checked for order. It does not know what it means.
import { RigError } from './rig-error.ts';

/** A piece of the rig's memory may be lost on a bad cable several times in a row before the rig counts as mute. */
export const readTries = 5;
export type Chunk = { readonly offset: number; readonly bytes: Uint8Array };
export async function readAll(length: number, read: (offset: number) => Promise<Chunk>): Promise<Uint8Array> {
  const all = new Uint8Array(length);
  for (let at = 0; at < length;) {
    const { offset, bytes } = await read(at);
    if (offset !== at || bytes.length === 0 || at + bytes.length > length)
      throw new RigError('badDescriptor', `The rig sent a wrong piece of its memory at byte ${at}.`);
    all.set(bytes, at);
    at += bytes.length;
  }
  return all;
}
