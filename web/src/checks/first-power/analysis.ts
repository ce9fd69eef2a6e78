// SPDX-License-Identifier: MIT
// first-power: polarity, how far the limited feed came, capacitance by the charge curve, leak, standby current; a short,
// something the wrong way round, a missing capacitor and a leak are told apart in words. Pure.
import { combined } from '#core/measurements/quantity';
import { guarded, measured, type ResultName } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { NotMeasurable, reading, trimmedReading, zeroOf } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import type { Stretch } from '../stretch.ts';
import { chargedOf } from './charge-fit.ts';
import type { Evidence } from './evidence.ts';
import { deadWords, metWords, missingWords, unemptiedWords } from './met-words.ts';

export const results = [
  { id: 'feed-polarity', title: 'Polarity before the feed', unit: 'V', level: 'polarity' },
  { id: 'charge-reached', title: 'Filled by the limited feed', unit: '%' },
  { id: 'capacitance', title: 'Capacitor', unit: 'F' },
  { id: 'leak-current', title: 'Leak when filled', unit: 'A', level: 'packCurrentNarrow' },
  { id: 'standby-current', title: 'Standby current', unit: 'A', level: 'packCurrentNarrow' },
] as const;
const packFromV = 1;
type Input = AnalysisInput<Evidence>;

export function analyse(input: Input): readonly Finding[] {
  const makers = [polarityOf, reachedOf, capacitorOf, leakOf, standbyOf];
  return results.flatMap((name, k) => guarded([name], () => [makers[k](name, input)]));
}
function polarityOf(name: ResultName, input: Input): Finding {
  const { rest } = input.evidence;
  const value = reading(input, 'polarity', rest);
  if (Math.abs(value.value) < packFromV)
    throw new NotMeasurable('No pack is at the pack lead. Plug it, then run again.');
  return measured(name, value, {
    formula: 'Mean of the polarity tap before any path was closed.',
    evidence: [{ ...rest, taps: ['polarity'] }],
    notes: value.value < 0 ? ['The pack is reversed. No path was closed. Unplug it and mend its plug.'] : [],
  });
}
/** Throws the words for a feed that was never closed. */
function closed({ evidence }: Input): { charge: Stretch; filled: Stretch } {
  const { charge, filled, emptied } = evidence;
  if (charge && filled) return { charge, filled };
  throw new NotMeasurable(emptied ? deadWords : unemptiedWords);
}
function reachedOf(name: ResultName, input: Input): Finding {
  const { filled } = closed(input);
  const side = reading(input, 'controllerVoltage', filled);
  const share = combined([side, reading(input, 'packVoltage', filled)], (v, pack) => (100 * v) / pack);
  return measured(name, share, {
    formula: 'Controller side over pack, a quarter of a second after the limited feed closed.',
    evidence: [{ ...filled, taps: ['controllerVoltage', 'packVoltage'] }],
    notes: metWords(side.value, share.value),
  });
}
/** What hangs on a capacitor that filled. */
function requireFilled(input: Input): void {
  const { filled } = closed(input);
  const side = reading(input, 'controllerVoltage', filled).value;
  const [met] = metWords(side, (100 * side) / reading(input, 'packVoltage', filled).value);
  if (met) throw new NotMeasurable(met);
}
function capacitorOf(name: ResultName, input: Input): Finding {
  const { charge } = closed(input);
  requireFilled(input);
  const { farad, atOnce } = chargedOf(input, charge, input.evidence.rest);
  return measured(name, farad, {
    formula:
      'Time constant of v = V - (V - v0) exp(-t/RC) between 1.5 and 4.2 V over the resistance of the limited feed; V is the pack at rest less the diode.',
    evidence: [{ ...charge, taps: ['controllerVoltage', 'packVoltage'] }],
    notes: atOnce ? [missingWords] : [],
  });
}
function leakOf(name: ResultName, input: Input): Finding {
  const { filled } = closed(input);
  const zero = zeroOf(input, 'packCurrentNarrow');
  return measured(name, trimmedReading(input, 'packCurrentNarrow', filled, zero), {
    formula: 'Pack current at the end of the charge, zero taken away.',
    evidence: [{ ...filled, taps: ['packCurrentNarrow'] }],
  });
}
function standbyOf(name: ResultName, input: Input): Finding {
  const { standby } = input.evidence;
  if (!standby) {
    requireFilled(input);
    throw new NotMeasurable(
      'The capacitor did not fill to 95 % of the pack, so the full feed was not closed. See the leak.',
    );
  }
  const zero = zeroOf(input, 'packCurrentNarrow');
  return measured(name, trimmedReading(input, 'packCurrentNarrow', standby, zero), {
    formula:
      'Pack current with the speed controller on at the full feed, servo and fan unplugged, zero taken away.',
    evidence: [{ ...standby, taps: ['packCurrentNarrow'] }],
  });
}
