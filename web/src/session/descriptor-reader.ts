// SPDX-License-Identifier: MIT
// From the bytes a rig sends of itself to its description, or words for what is wrong with them: damaged, not
// JSON, a field missing, or fields that contradict each other. It knows no line.
import { crc16 } from '#protocol/crc';
import { descriptorSchema, type Descriptor, type Tap } from '#core/samples/rig-description';
import { RigError } from './rig-error.ts';

const multiplexer = 7;
/** Slack for roundings in the descriptor's figures, V at the pin. */
const slackV = 0.3;

/** Throws RigError 'badDescriptor'. */
export function readDescriptor(bytes: Uint8Array, crc: number): Descriptor {
  if (crc16(bytes) !== crc)
    throw new RigError('badDescriptor', "The rig's description arrived damaged: its CRC does not agree.");
  const parsed = descriptorSchema.safeParse(json(bytes));
  if (!parsed.success) {
    const [issue] = parsed.error.issues;
    throw lies(`at "${issue.path.join('.') || 'its whole'}": ${issue.message}`);
  }
  requireSense(parsed.data);
  return parsed.data;
}
const lies = (words: string): RigError =>
  new RigError('badDescriptor', `The rig describes itself in a way that can't be true ${words}.`);

function json(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch (cause) {
    throw new RigError('badDescriptor', "The rig's description is not JSON.", { cause });
  }
}
function requireSense(descriptor: Descriptor): void {
  const ids = new Set<string>();
  const places = new Map<string, string>();
  for (const tap of descriptor.taps) {
    const at = `in tap "${tap.id}"`;
    if (ids.has(tap.id)) throw lies(`${at}: the name is given twice`);
    ids.add(tap.id);
    const place = `${tap.channel}/${tap.mux ?? tap.jumper ?? '-'}`;
    const taken = places.get(place);
    if (taken) throw lies(`${at}: it sits on the same converter input as "${taken}"`);
    places.set(place, tap.id);
    requireTap(tap, at, descriptor.nominalSupplyV);
  }
  if (places.has(`${multiplexer}/${descriptor.reference.mux}`))
    throw lies('in "reference": a tap sits on its multiplexer input');
}
const units = { voltage: 'V', current: 'A', temperature: 'C' } as const;

function requireTap(tap: Tap, at: string, supplyV: number): void {
  if ((tap.channel === multiplexer) !== (tap.mux !== undefined))
    throw lies(`${at}: a multiplexer input belongs to channel 7 and to no other`);
  if (tap.unit !== units[tap.quantity]) throw lies(`${at}: a ${tap.quantity} is not told in ${tap.unit}`);
  if (!(tap.low < tap.high)) throw lies(`${at}: its range runs from ${tap.low} to ${tap.high}`);
  const { scale } = tap;
  if (scale.kind !== 'linear') return;
  if (scale.unitsPerV === 0) throw lies(`${at}: its scale is 0`);
  const pins = [tap.low, tap.high].map((value) => value / scale.unitsPerV + scale.zeroV);
  if (Math.min(...pins) < -slackV || Math.max(...pins) > supplyV + slackV)
    throw lies(`${at}: its range does not fit the converter's 0 to ${supplyV} V`);
}
