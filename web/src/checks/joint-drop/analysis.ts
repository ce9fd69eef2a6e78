// SPDX-License-Identifier: MIT
// joint-drop: ohms of each joint and lead, the worst against its limit, and the heat in all of them at race current. Pure.
import { jointLimit, leadOhm } from '#core/limits/joint-limits';
import { copperPerK } from '#core/measurements/copper';
import { guarded, measured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { stepOhm } from '#core/measurements/load-step';
import { combined, linear, type Quantity } from '#core/measurements/quantity';
import { NotMeasurable, reading } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import { raceCurrentA } from '../race-current.ts';
import type { Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';
import { jointsOf, resultOf, type ListedJoint } from './joint-list.ts';

export const results = [
  { id: 'worst-joint', title: 'Worst joint, of what it may have', unit: '%' },
  { id: 'joints-heat', title: 'Heat in all joints and leads at race current', unit: 'W' },
] as const;
type Input = AnalysisInput<Evidence>;

interface Probed {
  readonly joint: ListedJoint;
  readonly ohm: Quantity;
  readonly stretch: Stretch;
}
export function analyse(input: Input): readonly Finding[] {
  const joints = jointsOf(input.car);
  const raceA = raceCurrentA(input.car);
  const found = joints.map((joint) => ({ joint, ...attempt(() => probedOf(input, joint)) }));
  const whole = () =>
    found.map(({ joint, probed, reason }) => {
      if (probed) return probed;
      throw new NotMeasurable(`The ${joint.name} was not measured: ${reason}`);
    });
  return [
    ...guarded([results[0]], () => [worstOf(whole())]),
    ...guarded([results[1]], () => [heatOf(whole(), raceA)]),
    ...found.map(({ joint, probed, reason }): Finding =>
      probed ? jointFinding(probed, raceA) : { measured: false, ...resultOf(joint), reason: reason ?? '' },
    ),
  ];
}
function attempt(make: () => Probed): { probed?: Probed; reason?: string } {
  try {
    return { probed: make() };
  } catch (error) {
    if (error instanceof NotMeasurable) return { reason: error.message };
    throw error;
  }
}
function probedOf(input: Input, joint: ListedJoint): Probed {
  const kept = input.evidence.steps.find(({ number }) => number === joint.number);
  if (!kept) throw new NotMeasurable('The run ended before it was probed. Run again.');
  const ohm = stepOhm(input, kept.step);
  const stretch = { fromS: kept.step.off.fromS, toS: kept.step.after.toS };
  return { joint, stretch, ohm: joint.kind === 'lead' ? atTwenty(input, ohm, stretch) : ohm };
}
/** A lead is as warm as the air: one step warms it by less than a kelvin. */
function atTwenty(input: Input, ohm: Quantity, stretch: Stretch): Quantity {
  const air = reading(input, 'thermistorAmbient', stretch);
  return combined([ohm, air], (r, c) => r / (1 + copperPerK * (c - 20)));
}
function jointFinding({ joint, ohm, stretch }: Probed, raceA: number): Finding {
  const watts = raceA ** 2 * ohm.value;
  const copper =
    joint.kind === 'lead' ? ` Copper of its gauge and length has ${milli(leadOhm(joint))} mΩ.` : '';
  return measured(resultOf(joint), ohm, {
    formula:
      'Voltage between the probe tips that came with a step of the pack load, over the step of its current.',
    evidence: [{ ...stretch, taps: ['packCurrentWide'] }],
    notes: [`${joint.name}: ${watts.toFixed(2)} W at ${raceA} A.${copper}`],
  });
}
const milli = (ohm: number): string => (1000 * ohm).toFixed(2);

function worstOf(probed: readonly Probed[]): Finding {
  const shareOf = ({ joint, ohm }: Probed) => ohm.value / (jointLimit(joint).max ?? 1);
  const worst = probed.reduce((most, one) => (shareOf(one) > shareOf(most) ? one : most));
  const most = jointLimit(worst.joint).max ?? 1;
  return measured(results[0], linear([[100 / most, worst.ohm]]), {
    formula: 'Resistance of each joint over the most that its kind may have; the greatest of them.',
    evidence: [{ ...worst.stretch, taps: ['packCurrentWide'] }],
    notes: [`Worst: ${worst.joint.name}, ${milli(worst.ohm.value)} of at most ${milli(most)} mΩ.`],
  });
}
function heatOf(probed: readonly Probed[], raceA: number): Finding {
  const watts = linear(probed.map(({ ohm }) => [raceA ** 2, ohm] as const));
  return measured(results[1], watts, {
    formula: `Sum of all resistances times ${raceA} A squared.`,
    evidence: probed.map(({ stretch }) => ({ ...stretch, taps: ['packCurrentWide'] })),
  });
}
