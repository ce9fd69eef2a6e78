// SPDX-License-Identifier: MIT
// Everything by which the way to a rig, or the rig, can let a person down: one error with a closed list of
// codes, each with a sentence that says what to do. A part that fails its check is a verdict, never one of these.

export type RigErrorCode =
  | 'noRig'
  | 'portBusy'
  | 'notARig'
  | 'linkLost'
  | 'timeout'
  | 'refused'
  | 'newerProtocol'
  | 'olderProtocol'
  | 'badDescriptor'
  | 'wrongSession'
  | 'tripped'
  | 'streamStopped'
  | 'notReady';

/** The words are the user's; they never change. */
export const linkLostWords = 'Link lost. The state of the rig is unknown: disconnect the pack.';

const advice: Readonly<Record<RigErrorCode, string>> = {
  noRig: 'Plug the rig in, check the cable and the name of the port, and connect again.',
  portBusy: 'Close the other program or page that uses the port, and connect again.',
  notARig: 'Choose the port of the rig, or load the firmware onto the board.',
  linkLost: linkLostWords,
  timeout: 'Check the cable, and connect again.',
  refused: 'Put right what the rig names, and run the check again.',
  newerProtocol: 'Update this program.',
  olderProtocol: "Renew the rig's firmware.",
  badDescriptor: "Renew the rig's firmware: what it says of itself can't be relied on.",
  wrongSession: 'Close the other program or page that drives this rig, and connect again.',
  tripped: 'Find out what made it trip, clear the trip, and run the check again.',
  streamStopped: linkLostWords,
  notReady: 'Connect the rig first.',
};
export class RigError extends Error {
  override readonly name = 'RigError';
  /** `seen` is one sentence: what happened. The message adds what to do. */
  constructor(
    readonly code: RigErrorCode,
    readonly seen = '',
    options?: { cause?: unknown },
  ) {
    super(messageOf(code, seen), options);
  }
}
/** A link that is gone is told in exactly the words above, whatever was seen. */
function messageOf(code: RigErrorCode, seen: string): string {
  return code === 'linkLost' || seen === '' ? advice[code] : `${seen} ${advice[code]}`;
}
/** A refusal by the rig, in the protocol's words. */
export class RefusedError extends RigError {
  constructor(
    readonly command: string,
    readonly reason: number,
    readonly detail: number,
    words: string,
  ) {
    super('refused', `The rig refused "${command}": ${words}`);
  }
}
