// SPDX-License-Identifier: MIT
// Rail at rest less rail with all three loads on, mean over the passes; shared errors fall out by themselves.
import { linear, type Quantity } from '#core/measurements/quantity';
import { measured, type ResultName } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { NotMeasurable, reading } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import type { Evidence } from './evidence.ts';

const allLoads = 7;

export function dropOf(name: ResultName, input: AnalysisInput<Evidence>): Finding {
  const steps = input.evidence.steps.filter(({ mask }) => mask === allLoads);
  if (steps.length === 0) throw new NotMeasurable('The step with all loads on was not reached. Run again.');
  const share = 1 / steps.length;
  const parts = steps.flatMap(({ loaded, free }): (readonly [number, Quantity])[] => [
    [share, reading(input, 'railVoltage', free)],
    [-share, reading(input, 'railVoltage', loaded)],
  ]);
  return measured(name, linear(parts), {
    formula: 'Rail with the loads off less rail with all loads on, mean over the passes.',
    evidence: steps.flatMap(({ loaded, free }) => [
      { ...loaded, taps: ['railVoltage'] },
      { ...free, taps: ['railVoltage'] },
    ]),
  });
}
