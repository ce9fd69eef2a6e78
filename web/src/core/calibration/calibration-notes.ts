// SPDX-License-Identifier: MIT
// What a person is told beside one result of the calibrations behind it: those that are missing and would help, those
// that would not be adopted, those that are old. Only of taps that weigh in this result. It knows budgets, no check.
import type { BudgetLine, Finding } from '../measurements/measurement.ts';
import type { RigDescription } from '../samples/rig-description.ts';
import { lineTap } from '../verdicts/line-tap.ts';
import { missingWords, oldWords } from './calibration-age.ts';
import type { CalibrationLine } from './line-calibration.ts';

/** A tap whose lines are below this part of the result's standard uncertainty is no matter here. */
const weighs = 0.2;

/** `expected`: what a calibration would leave of a tap; null where it would not be adopted. */
export function calibrationNotes(
  rig: RigDescription,
  finding: Finding,
  expected: (tap: string) => CalibrationLine | null,
): string[] {
  if (!finding.measured) return [];
  const taps = tapsOf(finding.budget.filter(({ u }) => u >= weighs * finding.u));
  const used = (rig.store?.calibration ?? []).filter(({ tap }) => taps.includes(tap));
  const linear = rig.descriptor.taps.filter(({ id, scale }) => scale.kind === 'linear' && taps.includes(id));
  const missing = linear.map(({ id }) => id).filter((id) => !used.some(({ tap }) => tap === id));
  return [
    ...missingWords(missing.filter((tap) => expected(tap) !== null)),
    ...idleWords(missing.filter((tap) => expected(tap) === null)),
    ...used.flatMap(oldWords),
  ];
}
const idleWords = (taps: readonly string[]): string[] =>
  taps.length === 0
    ? []
    : [
        `Not calibrated: ${taps.join(', ')}. The declared tolerances of the rig count; a calibration would not be adopted, as it would hardly be tighter.`,
      ];
const tapsOf = (budget: readonly BudgetLine[]): string[] => [
  ...new Set(budget.flatMap((line) => lineTap(line) ?? [])),
];
