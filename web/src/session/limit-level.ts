// SPDX-License-Identifier: MIT
// Trip levels from SI to what the rig compares: codes of one conversion, or ticks between two captured edges.
// It knows the rig's description and nothing of why a level was chosen.
import { codeOf } from '#protocol/codes';
import type { RigDescription, Tap } from '#core/samples/rig-description';
import { codeAt } from '#core/samples/tap-scaling';

const codeMax = 1023;
const tapOfLimit: Readonly<Record<string, string>> = {
  packNarrowSlow: 'packCurrentNarrow',
  packWideSlow: 'packCurrentWide',
  packWideFast: 'packCurrentWide',
  railCurrentSlow: 'railCurrent',
  packUnder: 'packVoltage',
};
export interface LimitSetting {
  readonly which: number;
  readonly level: number;
}
/** `level` in A, V, C or (overSpeed) rpm. Throws RangeError for a limit or a tap that does not exist. */
export function limitSetting(
  rig: RigDescription,
  which: string,
  level: number,
  polePairs: number,
  supplyV: number,
): LimitSetting {
  const code = codeOf('limit', which);
  if (code === undefined) throw new RangeError(`there is no limit "${which}"`);
  if (which === 'overSpeed') return { which: code, level: edgeTicks(level, polePairs, rig.descriptor.tickS) };
  return { which: code, level: codeFor(tapFor(rig, which), level, supplyV) };
}
/** Two captured edges an electrical turn, `polePairs` electrical turns a turn. */
export const edgeTicks = (rpm: number, polePairs: number, tickS: number): number =>
  Math.round(60 / (rpm * polePairs * 2) / tickS);

function tapFor({ descriptor }: RigDescription, which: string): Tap {
  const input = /^thermistor([1-4])$/.exec(which)?.[1];
  const found = descriptor.taps.find((tap) =>
    input ? tap.mux === Number(input) - 1 : tap.id === tapOfLimit[which],
  );
  if (!found) throw new RangeError(`this rig has no tap for the limit "${which}"`);
  return found;
}
function codeFor(tap: Tap, value: number, supplyV: number): number {
  return Math.min(codeMax, Math.max(0, Math.round(codeAt(tap, value, supplyV))));
}
