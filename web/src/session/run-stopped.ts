// SPDX-License-Identifier: MIT
// How a run ends before its procedure is through: an event with its kind and the reason in words. It is what
// every promise of the bench rejects with; the results of such a run are not measured.
import { RigError } from './rig-error.ts';

export type EndingKind = 'stopped' | 'tripped' | 'link lost' | 'failed';
export class RunStopped extends Error {
  override readonly name = 'RunStopped';
  constructor(
    readonly kind: EndingKind,
    words: string,
    options?: { cause?: unknown },
  ) {
    super(words, options);
  }
}
/** Whatever a run threw, as an ending. Errors of a programmer are told as such and keep their cause. */
export function asRunStopped(thrown: unknown): RunStopped {
  if (thrown instanceof RunStopped) return thrown;
  if (thrown instanceof RigError) return new RunStopped(kindOf(thrown), thrown.message, { cause: thrown });
  const words = thrown instanceof Error ? thrown.message : String(thrown);
  return new RunStopped('failed', `The check broke off by a fault of this program: ${words}`, {
    cause: thrown,
  });
}
function kindOf({ code }: RigError): EndingKind {
  if (code === 'linkLost' || code === 'streamStopped') return 'link lost';
  return code === 'tripped' ? 'tripped' : 'failed';
}
