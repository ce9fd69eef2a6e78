// SPDX-License-Identifier: MIT
// winding-balance: the three pairs of phases at 20 C, their mean, and how far they differ. Resistance as thermometer and
// back after IEC 60034-1: R20 = R/(1 + 0.00393 (t - 20)), t taken from the can of a motor that has rested. Pure.
import { contactTemperature } from '#core/measurements/contact-temperature';
import { copperPerK } from '#core/measurements/copper';
import { guarded, measured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { stepOhm } from '#core/measurements/load-step';
import { combined, linear, widened, type Quantity } from '#core/measurements/quantity';
import { rectangular, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, reading } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import type { Stretch } from '../stretch.ts';
import { pairs, type Evidence } from './evidence.ts';

export const results = [
  { id: 'winding-ab', title: 'Winding, phases A and B, at 20 °C', unit: 'ohm' },
  { id: 'winding-bc', title: 'Winding, phases B and C, at 20 °C', unit: 'ohm' },
  { id: 'winding-ca', title: 'Winding, phases C and A, at 20 °C', unit: 'ohm' },
  { id: 'winding-mean', title: 'Winding, mean of the pairs, at 20 °C', unit: 'ohm' },
  { id: 'winding-spread', title: 'Spread of the pairs', unit: '%' },
] as const;
/** A motor that rested has its can at the air's temperature; beyond this its winding is warmer than anybody knows. */
const restedK = 5;
/** Per cent of spread from which it is worth telling which winding is the odd one. */
const tellFrom = 2;
type Input = AnalysisInput<Evidence>;

interface Pair {
  readonly ohm: Quantity;
  readonly stretch: Stretch;
}
export function analyse(input: Input): readonly Finding[] {
  return guarded(results, () => {
    const found = pairs.map((pair) => pairOf(input, pair));
    const ohms = found.map(({ ohm }) => ohm);
    const mean = linear(ohms.map((ohm) => [1 / 3, ohm] as const));
    return [
      ...found.map(({ ohm, stretch }, k) =>
        measured(results[k], ohm, {
          formula:
            'Voltage over current of a step of the pack load through the pair, by four wires, taken to 20 °C.',
          evidence: evidenceOf([stretch]),
        }),
      ),
      measured(results[3], mean, {
        formula: 'Mean of the three pairs.',
        evidence: evidenceOf(stretchesOf(found)),
      }),
      spreadOf(ohms, found),
    ];
  });
}
function pairOf(input: Input, pair: (typeof pairs)[number]): Pair {
  const kept = input.evidence.steps.find((one) => one.pair === pair);
  if (!kept) throw new NotMeasurable(`The run ended before phases ${pair} were measured. Run again.`);
  const { step } = kept;
  const stretch = { fromS: step.off.fromS, toS: step.after.toS };
  const ohm = stepOhm(input, step);
  const at = combined([ohm, windingC(input, stretch)], (r, c) => r / (1 + copperPerK * (c - 20)));
  return { ohm: at, stretch };
}
/** The winding of a rested motor is as warm as its can; half of what the can differs from the air is in doubt. */
function windingC(input: Input, stretch: Stretch): Quantity {
  const can = contactTemperature(input, 'thermistorMotor', 'thermistorAmbient', stretch);
  const apartK = Math.abs(can.value - reading(input, 'thermistorAmbient', stretch).value);
  if (apartK > restedK)
    throw new NotMeasurable(
      `The can of the motor is ${apartK.toFixed(0)} K off the air, so the temperature of its winding is unknown. Let it rest until both agree, then run again.`,
    );
  return widened(
    can,
    typeB('winding warmth', 'winding against can', 'from memory'),
    rectangular(0.5 + apartK / 2),
  );
}
/** Gain of the probe, shunt and temperature are the same in all three and fall out. */
function spreadOf(ohms: readonly Quantity[], found: readonly Pair[]): Finding {
  const values = ohms.map(({ value }) => value);
  const high = values.indexOf(Math.max(...values));
  const low = values.indexOf(Math.min(...values));
  const spread = combined(ohms, (...r) => (300 * (r[high] - r[low])) / (r[0] + r[1] + r[2]));
  return measured(results[4], spread, {
    formula: 'Greatest less smallest pair, over the mean of all three.',
    evidence: evidenceOf(stretchesOf(found)),
    notes: spread.value > tellFrom ? [`Greatest: phases ${pairs[high]}. ${suspect(low)}`] : [],
  });
}
/** In a star the pair without the odd winding stands out alone. */
const suspect = (low: number): string =>
  `If one winding has too much, it is the one that the smallest pair leaves out: ${['C', 'A', 'B'][low]}.`;
const stretchesOf = (found: readonly Pair[]) => found.map(({ stretch }) => stretch);
const evidenceOf = (stretches: readonly Stretch[]) =>
  stretches.map((stretch) => ({ ...stretch, taps: ['packCurrentWide'] }));
